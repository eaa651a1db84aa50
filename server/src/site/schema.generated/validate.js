// Made from schemas/site.schema.json by `npm run generate`; edits belong there.
var __getOwnPropNames = Object.getOwnPropertyNames;
var __commonJS = (cb, mod) => function __require() {
  try {
    return mod || (0, cb[__getOwnPropNames(cb)[0]])((mod = { exports: {} }).exports, mod), mod.exports;
  } catch (e) {
    throw mod = 0, e;
  }
};

// node_modules/ajv/dist/runtime/ucs2length.js
var require_ucs2length = __commonJS({
  "node_modules/ajv/dist/runtime/ucs2length.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    function ucs2length(str) {
      const len = str.length;
      let length = 0;
      let pos = 0;
      let value;
      while (pos < len) {
        length++;
        value = str.charCodeAt(pos++);
        if (value >= 55296 && value <= 56319 && pos < len) {
          value = str.charCodeAt(pos);
          if ((value & 64512) === 56320)
            pos++;
        }
      }
      return length;
    }
    exports.default = ucs2length;
    ucs2length.code = 'require("ajv/dist/runtime/ucs2length").default';
  }
});

// <stdin>
var site = validate52;
var func2 = require_ucs2length().default;
var pattern4 = new RegExp("^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$", "u");
function validate52(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate52.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "name" || key0 === "timezone" || key0 === "description")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.name !== void 0) {
      let data0 = data.name;
      if (typeof data0 === "string") {
        if (func2(data0) < 1) {
          const err1 = { instancePath: instancePath + "/name", schemaPath: "#/properties/name/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/name", schemaPath: "#/properties/name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.timezone !== void 0) {
      let data1 = data.timezone;
      if (typeof data1 === "string") {
        if (!pattern4.test(data1)) {
          const err3 = { instancePath: instancePath + "/timezone", schemaPath: "#/properties/timezone/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$" }, message: 'must match pattern "^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/timezone", schemaPath: "#/properties/timezone/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err5 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate52.errors = vErrors;
  return errors === 0;
}
validate52.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var vlans = validate53;
var pattern6 = new RegExp("^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9])$", "u");
var pattern7 = new RegExp("^[A-Za-z0-9_-]+$", "u");
var pattern8 = new RegExp("^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]) ?- ?((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$", "u");
function validate53(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate53.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "id" || key0 === "subnet" || key0 === "gateway" || key0 === "dhcp-pool" || key0 === "querier" || key0 === "description")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.id !== void 0) {
      let data0 = data.id;
      if (!(typeof data0 == "number" && (!(data0 % 1) && !isNaN(data0)) && isFinite(data0))) {
        const err1 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 4094 || isNaN(data0)) {
          const err2 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4094 }, message: "must be <= 4094" };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
        if (data0 < 1 || isNaN(data0)) {
          const err3 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      }
    }
    if (data.subnet !== void 0) {
      let data1 = data.subnet;
      if (typeof data1 === "string") {
        if (!pattern6.test(data1)) {
          const err4 = { instancePath: instancePath + "/subnet", schemaPath: "#/$defs/subnet/pattern", keyword: "pattern", params: { pattern: "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9])$" }, message: 'must match pattern "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9])$"' };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/subnet", schemaPath: "#/$defs/subnet/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.gateway !== void 0) {
      let data2 = data.gateway;
      if (typeof data2 === "string") {
        if (!pattern7.test(data2)) {
          const err6 = { instancePath: instancePath + "/gateway", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/gateway", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data["dhcp-pool"] !== void 0) {
      let data3 = data["dhcp-pool"];
      if (typeof data3 === "string") {
        if (!pattern8.test(data3)) {
          const err8 = { instancePath: instancePath + "/dhcp-pool", schemaPath: "#/properties/dhcp-pool/pattern", keyword: "pattern", params: { pattern: "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]) ?- ?((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$" }, message: 'must match pattern "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]) ?- ?((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$"' };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/dhcp-pool", schemaPath: "#/properties/dhcp-pool/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.querier !== void 0) {
      let data4 = data.querier;
      if (typeof data4 === "string") {
        if (!pattern7.test(data4)) {
          const err10 = { instancePath: instancePath + "/querier", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/querier", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err12 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate53.errors = vErrors;
  return errors === 0;
}
validate53.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var devices = validate54;
var schema39 = { "type": "object", "additionalProperties": false, "required": ["kind"], "allOf": [{ "if": { "properties": { "kind": { "enum": ["switch", "router", "access-point", "media-converter", "display", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "sessions": false } } }, { "if": { "properties": { "kind": { "enum": ["switch", "router", "media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "basic-rate": false, "multicast-to-unicast": false } } }, { "if": { "properties": { "kind": { "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "tuner", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "decoders": false, "decodes": false } } }, { "if": { "properties": { "kind": { "enum": ["media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "igmp-snooping": false, "unregistered-multicast": false, "without-querier": false, "spanning-tree": false, "spanning-tree-priority": false, "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "router-port": false, "forward-reports": false } } } } } }, { "if": { "properties": { "kind": { "enum": ["access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "routing": false, "multicast-routing": false, "addresses": false } } }, { "if": { "properties": { "kind": { "enum": ["camera", "display", "computer", "tuner", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "poe-budget": false } } }, { "if": { "properties": { "kind": { "enum": ["media-converter", "camera", "display", "tuner", "patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "lag": false, "lacp": false } } } } } }, { "if": { "properties": { "kind": { "enum": ["patch-panel"] } }, "required": ["kind"] }, "then": { "properties": { "address": false, "mac": false, "reserved": false, "interface": false, "speed": false, "poe": false, "routes": false, "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "speed": false, "vlan": false, "trunk": false, "native": false, "address": false, "addresses": false, "poe": false, "mac": false, "reserved": false, "interface": false } } } } } }], "properties": { "kind": { "type": "string", "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel"] }, "igmp-snooping": { "type": "boolean" }, "unregistered-multicast": { "type": "string", "enum": ["flood", "drop"] }, "without-querier": { "type": "string", "enum": ["by-reports", "flood"] }, "spanning-tree": { "type": "boolean" }, "spanning-tree-priority": { "type": "integer", "minimum": 0, "maximum": 61440, "multipleOf": 4096 }, "poe-budget": { "$ref": "#/$defs/power" }, "routing": { "type": "boolean" }, "multicast-routing": { "type": "boolean" }, "ports": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/name" }, "additionalProperties": { "$ref": "#/$defs/port" } }, "address": { "$ref": "#/$defs/own-address" }, "addresses": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/vlan-name" }, "additionalProperties": { "$ref": "#/$defs/own-address" } }, "mac": { "$ref": "#/$defs/mac" }, "reserved": { "type": "boolean" }, "interface": { "type": "string", "pattern": "^[^\\s/:]{1,15}$" }, "speed": { "$ref": "#/$defs/bit-rate" }, "poe": { "$ref": "#/$defs/poe" }, "basic-rate": { "$ref": "#/$defs/bit-rate", "enum": ["1 Mb/s", "2 Mb/s", "5.5 Mb/s", "6 Mb/s", "9 Mb/s", "11 Mb/s", "12 Mb/s", "18 Mb/s", "24 Mb/s", "36 Mb/s", "48 Mb/s", "54 Mb/s"] }, "multicast-to-unicast": { "type": "boolean" }, "sessions": { "type": "integer", "minimum": 1 }, "decoders": { "type": "integer", "minimum": 1 }, "decodes": { "$ref": "#/$defs/decodes" }, "routes": { "type": "array", "items": { "$ref": "#/$defs/route" } }, "description": { "type": "string" }, "model": { "type": "string" }, "location": { "type": "string" }, "building": { "type": "string", "minLength": 1 } } };
var func1 = Object.prototype.hasOwnProperty;
var pattern11 = new RegExp("^[0-9]+(\\.[0-9]+)? W$", "u");
var pattern5 = new RegExp("^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$", "u");
var pattern17 = new RegExp("^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$", "u");
var pattern21 = new RegExp("^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$", "u");
var pattern22 = new RegExp("^[^\\s/:]{1,15}$", "u");
var pattern13 = new RegExp("^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "u");
var schema42 = { "type": "object", "additionalProperties": false, "properties": { "speed": { "$ref": "#/$defs/bit-rate" }, "vlan": { "$ref": "#/$defs/vlan-name" }, "trunk": { "type": "array", "minItems": 1, "uniqueItems": true, "items": { "$ref": "#/$defs/vlan-name", "type": "string" } }, "native": { "$ref": "#/$defs/vlan-name" }, "address": { "$ref": "#/$defs/own-address" }, "addresses": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/vlan-name" }, "additionalProperties": { "$ref": "#/$defs/own-address" } }, "poe": { "$ref": "#/$defs/poe" }, "mac": { "$ref": "#/$defs/mac" }, "reserved": { "type": "boolean" }, "interface": { "type": "string", "pattern": "^[^\\s/:]{1,15}$" }, "lag": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "lacp": { "type": "string", "enum": ["active", "passive", "off"] }, "router-port": { "type": "boolean" }, "forward-reports": { "type": "boolean" }, "description": { "type": "string" } } };
var schema50 = { "type": ["string", "object"], "if": { "type": "string" }, "then": { "type": "string", "enum": ["af", "at", "bt", "bt-type-4"] }, "additionalProperties": false, "properties": { "class": { "type": "integer", "minimum": 0, "maximum": 8 }, "power": { "$ref": "#/$defs/power" } } };
function validate25(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate25.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (typeof data !== "string" && !(data && typeof data == "object" && !Array.isArray(data))) {
    const err0 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: schema50.type }, message: "must be string,object" };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  const _errs1 = errors;
  let valid0 = true;
  const _errs2 = errors;
  if (typeof data !== "string") {
    const err1 = {};
    if (vErrors === null) {
      vErrors = [err1];
    } else {
      vErrors.push(err1);
    }
    errors++;
  }
  var _valid0 = _errs2 === errors;
  errors = _errs1;
  if (vErrors !== null) {
    if (_errs1) {
      vErrors.length = _errs1;
    } else {
      vErrors = null;
    }
  }
  if (_valid0) {
    const _errs4 = errors;
    if (typeof data !== "string") {
      const err2 = { instancePath, schemaPath: "#/then/type", keyword: "type", params: { type: "string" }, message: "must be string" };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (!(data === "af" || data === "at" || data === "bt" || data === "bt-type-4")) {
      const err3 = { instancePath, schemaPath: "#/then/enum", keyword: "enum", params: { allowedValues: schema50.then.enum }, message: "must be equal to one of the allowed values" };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    var _valid0 = _errs4 === errors;
    valid0 = _valid0;
  }
  if (!valid0) {
    const err4 = { instancePath, schemaPath: "#/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "class" || key0 === "power")) {
        const err5 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.class !== void 0) {
      let data0 = data.class;
      if (!(typeof data0 == "number" && (!(data0 % 1) && !isNaN(data0)) && isFinite(data0))) {
        const err6 = { instancePath: instancePath + "/class", schemaPath: "#/properties/class/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 8 || isNaN(data0)) {
          const err7 = { instancePath: instancePath + "/class", schemaPath: "#/properties/class/maximum", keyword: "maximum", params: { comparison: "<=", limit: 8 }, message: "must be <= 8" };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (data0 < 0 || isNaN(data0)) {
          const err8 = { instancePath: instancePath + "/class", schemaPath: "#/properties/class/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0" };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      }
    }
    if (data.power !== void 0) {
      let data1 = data.power;
      if (typeof data1 === "string") {
        if (!pattern11.test(data1)) {
          const err9 = { instancePath: instancePath + "/power", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? W$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/power", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
  }
  validate25.errors = vErrors;
  return errors === 0;
}
validate25.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate24(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate24.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!func1.call(schema42.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.speed !== void 0) {
      let data0 = data.speed;
      if (typeof data0 === "string") {
        if (!pattern13.test(data0)) {
          const err1 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.vlan !== void 0) {
      let data1 = data.vlan;
      if (typeof data1 === "string") {
        if (!pattern7.test(data1)) {
          const err3 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.trunk !== void 0) {
      let data2 = data.trunk;
      if (Array.isArray(data2)) {
        if (data2.length < 1) {
          const err5 = { instancePath: instancePath + "/trunk", schemaPath: "#/properties/trunk/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items" };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        const len0 = data2.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data3 = data2[i0];
          if (typeof data3 !== "string") {
            const err6 = { instancePath: instancePath + "/trunk/" + i0, schemaPath: "#/properties/trunk/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
          if (typeof data3 === "string") {
            if (!pattern7.test(data3)) {
              const err7 = { instancePath: instancePath + "/trunk/" + i0, schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
          } else {
            const err8 = { instancePath: instancePath + "/trunk/" + i0, schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
        let i1 = data2.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data2[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err9 = { instancePath: instancePath + "/trunk", schemaPath: "#/properties/trunk/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err10 = { instancePath: instancePath + "/trunk", schemaPath: "#/properties/trunk/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.native !== void 0) {
      let data4 = data.native;
      if (typeof data4 === "string") {
        if (!pattern7.test(data4)) {
          const err11 = { instancePath: instancePath + "/native", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/native", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.address !== void 0) {
      let data5 = data.address;
      if (typeof data5 === "string") {
        if (!pattern17.test(data5)) {
          const err13 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, message: 'must match pattern "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$"' };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.addresses !== void 0) {
      let data6 = data.addresses;
      if (data6 && typeof data6 == "object" && !Array.isArray(data6)) {
        if (Object.keys(data6).length < 1) {
          const err15 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties" };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
        for (const key1 in data6) {
          const _errs22 = errors;
          if (typeof key1 === "string") {
            if (!pattern7.test(key1)) {
              const err16 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"', propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
          } else {
            const err17 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
          var valid9 = _errs22 === errors;
          if (!valid9) {
            const err18 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid" };
            if (vErrors === null) {
              vErrors = [err18];
            } else {
              vErrors.push(err18);
            }
            errors++;
          }
        }
        for (const key2 in data6) {
          let data7 = data6[key2];
          if (typeof data7 === "string") {
            if (!pattern17.test(data7)) {
              const err19 = { instancePath: instancePath + "/addresses/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, message: 'must match pattern "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$"' };
              if (vErrors === null) {
                vErrors = [err19];
              } else {
                vErrors.push(err19);
              }
              errors++;
            }
          } else {
            const err20 = { instancePath: instancePath + "/addresses/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
        }
      } else {
        const err21 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      }
    }
    if (data.poe !== void 0) {
      if (!validate25(data.poe, { instancePath: instancePath + "/poe", parentData: data, parentDataProperty: "poe", rootData, dynamicAnchors })) {
        vErrors = vErrors === null ? validate25.errors : vErrors.concat(validate25.errors);
        errors = vErrors.length;
      }
    }
    if (data.mac !== void 0) {
      let data9 = data.mac;
      if (typeof data9 === "string") {
        if (!pattern21.test(data9)) {
          const err22 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/pattern", keyword: "pattern", params: { pattern: "^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$" }, message: 'must match pattern "^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$"' };
          if (vErrors === null) {
            vErrors = [err22];
          } else {
            vErrors.push(err22);
          }
          errors++;
        }
      } else {
        const err23 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data.reserved !== void 0) {
      if (typeof data.reserved !== "boolean") {
        const err24 = { instancePath: instancePath + "/reserved", schemaPath: "#/properties/reserved/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
    if (data.interface !== void 0) {
      let data11 = data.interface;
      if (typeof data11 === "string") {
        if (!pattern22.test(data11)) {
          const err25 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/pattern", keyword: "pattern", params: { pattern: "^[^\\s/:]{1,15}$" }, message: 'must match pattern "^[^\\s/:]{1,15}$"' };
          if (vErrors === null) {
            vErrors = [err25];
          } else {
            vErrors.push(err25);
          }
          errors++;
        }
      } else {
        const err26 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err26];
        } else {
          vErrors.push(err26);
        }
        errors++;
      }
    }
    if (data.lag !== void 0) {
      let data12 = data.lag;
      if (typeof data12 === "string") {
        if (!pattern7.test(data12)) {
          const err27 = { instancePath: instancePath + "/lag", schemaPath: "#/properties/lag/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err27];
          } else {
            vErrors.push(err27);
          }
          errors++;
        }
      } else {
        const err28 = { instancePath: instancePath + "/lag", schemaPath: "#/properties/lag/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data.lacp !== void 0) {
      let data13 = data.lacp;
      if (typeof data13 !== "string") {
        const err29 = { instancePath: instancePath + "/lacp", schemaPath: "#/properties/lacp/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
      if (!(data13 === "active" || data13 === "passive" || data13 === "off")) {
        const err30 = { instancePath: instancePath + "/lacp", schemaPath: "#/properties/lacp/enum", keyword: "enum", params: { allowedValues: schema42.properties.lacp.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
    }
    if (data["router-port"] !== void 0) {
      if (typeof data["router-port"] !== "boolean") {
        const err31 = { instancePath: instancePath + "/router-port", schemaPath: "#/properties/router-port/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
    }
    if (data["forward-reports"] !== void 0) {
      if (typeof data["forward-reports"] !== "boolean") {
        const err32 = { instancePath: instancePath + "/forward-reports", schemaPath: "#/properties/forward-reports/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err32];
        } else {
          vErrors.push(err32);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err33 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err33];
        } else {
          vErrors.push(err33);
        }
        errors++;
      }
    }
  } else {
    const err34 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err34];
    } else {
      vErrors.push(err34);
    }
    errors++;
  }
  validate24.errors = vErrors;
  return errors === 0;
}
validate24.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var schema60 = { "type": "string", "enum": ["h264", "h265", "mpeg2", "mjpeg", "av1", "vp9"] };
var schema61 = { "type": "string", "enum": ["pcma", "pcmu", "g722", "aac", "opus", "mp2", "ac3", "l16"] };
var pattern31 = new RegExp("^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$", "u");
function validate29(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate29.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "video" || key0 === "audio" || key0 === "picture")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.video !== void 0) {
      let data0 = data.video;
      if (Array.isArray(data0)) {
        if (data0.length < 1) {
          const err1 = { instancePath: instancePath + "/video", schemaPath: "#/properties/video/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items" };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
        const len0 = data0.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data1 = data0[i0];
          if (typeof data1 !== "string") {
            const err2 = { instancePath: instancePath + "/video/" + i0, schemaPath: "#/properties/video/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
          if (typeof data1 !== "string") {
            const err3 = { instancePath: instancePath + "/video/" + i0, schemaPath: "#/$defs/video-codec/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (!(data1 === "h264" || data1 === "h265" || data1 === "mpeg2" || data1 === "mjpeg" || data1 === "av1" || data1 === "vp9")) {
            const err4 = { instancePath: instancePath + "/video/" + i0, schemaPath: "#/$defs/video-codec/enum", keyword: "enum", params: { allowedValues: schema60.enum }, message: "must be equal to one of the allowed values" };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        let i1 = data0.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data0[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err5 = { instancePath: instancePath + "/video", schemaPath: "#/properties/video/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/video", schemaPath: "#/properties/video/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.audio !== void 0) {
      let data2 = data.audio;
      if (Array.isArray(data2)) {
        if (data2.length < 1) {
          const err7 = { instancePath: instancePath + "/audio", schemaPath: "#/properties/audio/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items" };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        const len1 = data2.length;
        for (let i2 = 0; i2 < len1; i2++) {
          let data3 = data2[i2];
          if (typeof data3 !== "string") {
            const err8 = { instancePath: instancePath + "/audio/" + i2, schemaPath: "#/properties/audio/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
          if (typeof data3 !== "string") {
            const err9 = { instancePath: instancePath + "/audio/" + i2, schemaPath: "#/$defs/audio-codec/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
          if (!(data3 === "pcma" || data3 === "pcmu" || data3 === "g722" || data3 === "aac" || data3 === "opus" || data3 === "mp2" || data3 === "ac3" || data3 === "l16")) {
            const err10 = { instancePath: instancePath + "/audio/" + i2, schemaPath: "#/$defs/audio-codec/enum", keyword: "enum", params: { allowedValues: schema61.enum }, message: "must be equal to one of the allowed values" };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        let i3 = data2.length;
        let j1;
        if (i3 > 1) {
          const indices1 = {};
          for (; i3--; ) {
            let item1 = data2[i3];
            if (typeof item1 !== "string") {
              continue;
            }
            if (typeof indices1[item1] == "number") {
              j1 = indices1[item1];
              const err11 = { instancePath: instancePath + "/audio", schemaPath: "#/properties/audio/uniqueItems", keyword: "uniqueItems", params: { i: i3, j: j1 }, message: "must NOT have duplicate items (items ## " + j1 + " and " + i3 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
              break;
            }
            indices1[item1] = i3;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/audio", schemaPath: "#/properties/audio/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.picture !== void 0) {
      let data4 = data.picture;
      if (typeof data4 === "string") {
        if (!pattern31.test(data4)) {
          const err13 = { instancePath: instancePath + "/picture", schemaPath: "#/properties/picture/pattern", keyword: "pattern", params: { pattern: "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$" }, message: 'must match pattern "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$"' };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/picture", schemaPath: "#/properties/picture/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
  } else {
    const err15 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err15];
    } else {
      vErrors.push(err15);
    }
    errors++;
  }
  validate29.errors = vErrors;
  return errors === 0;
}
validate29.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var schema63 = { "type": ["string", "integer"], "pattern": "^[A-Za-z0-9_-]+$" };
var pattern32 = new RegExp("^(default|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9]))$", "u");
var pattern35 = new RegExp("^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$", "u");
function validate31(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate31.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.to === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.port === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "port" }, message: "must have required property 'port'" };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "to" || key0 === "port" || key0 === "vlan" || key0 === "via")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      let data0 = data.to;
      if (typeof data0 === "string") {
        if (!pattern32.test(data0)) {
          const err3 = { instancePath: instancePath + "/to", schemaPath: "#/properties/to/pattern", keyword: "pattern", params: { pattern: "^(default|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9]))$" }, message: 'must match pattern "^(default|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9]))$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/to", schemaPath: "#/properties/to/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.port !== void 0) {
      let data1 = data.port;
      if (typeof data1 !== "string" && !(typeof data1 == "number" && (!(data1 % 1) && !isNaN(data1)) && isFinite(data1))) {
        const err5 = { instancePath: instancePath + "/port", schemaPath: "#/$defs/own-port/type", keyword: "type", params: { type: schema63.type }, message: "must be string,integer" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (typeof data1 === "string") {
        if (!pattern7.test(data1)) {
          const err6 = { instancePath: instancePath + "/port", schemaPath: "#/$defs/own-port/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      }
    }
    if (data.vlan !== void 0) {
      let data2 = data.vlan;
      if (typeof data2 === "string") {
        if (!pattern7.test(data2)) {
          const err7 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.via !== void 0) {
      let data3 = data.via;
      if (typeof data3 === "string") {
        if (!pattern35.test(data3)) {
          const err9 = { instancePath: instancePath + "/via", schemaPath: "#/$defs/address/pattern", keyword: "pattern", params: { pattern: "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$" }, message: 'must match pattern "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/via", schemaPath: "#/$defs/address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
  } else {
    const err11 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err11];
    } else {
      vErrors.push(err11);
    }
    errors++;
  }
  validate31.errors = vErrors;
  return errors === 0;
}
validate31.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate54(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate54.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  const _errs2 = errors;
  let valid1 = true;
  const _errs3 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing0;
    if (data.kind === void 0 && (missing0 = "kind")) {
      const err0 = {};
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data0 = data.kind;
        if (!(data0 === "switch" || data0 === "router" || data0 === "access-point" || data0 === "media-converter" || data0 === "display" || data0 === "patch-panel")) {
          const err1 = {};
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      }
    }
  }
  var _valid0 = _errs3 === errors;
  errors = _errs2;
  if (vErrors !== null) {
    if (_errs2) {
      vErrors.length = _errs2;
    } else {
      vErrors = null;
    }
  }
  if (_valid0) {
    const _errs5 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.sessions !== void 0) {
        const err2 = { instancePath: instancePath + "/sessions", schemaPath: "#/allOf/0/then/properties/sessions/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    var _valid0 = _errs5 === errors;
    valid1 = _valid0;
    if (valid1) {
      var props0 = {};
      props0.sessions = true;
      props0.kind = true;
    }
  }
  if (!valid1) {
    const err3 = { instancePath, schemaPath: "#/allOf/0/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err3];
    } else {
      vErrors.push(err3);
    }
    errors++;
  }
  const _errs7 = errors;
  let valid4 = true;
  const _errs8 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing1;
    if (data.kind === void 0 && (missing1 = "kind")) {
      const err4 = {};
      if (vErrors === null) {
        vErrors = [err4];
      } else {
        vErrors.push(err4);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data2 = data.kind;
        if (!(data2 === "switch" || data2 === "router" || data2 === "media-converter" || data2 === "server" || data2 === "camera" || data2 === "display" || data2 === "computer" || data2 === "tuner" || data2 === "patch-panel")) {
          const err5 = {};
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      }
    }
  }
  var _valid1 = _errs8 === errors;
  errors = _errs7;
  if (vErrors !== null) {
    if (_errs7) {
      vErrors.length = _errs7;
    } else {
      vErrors = null;
    }
  }
  if (_valid1) {
    const _errs10 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["basic-rate"] !== void 0) {
        const err6 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/allOf/1/then/properties/basic-rate/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (data["multicast-to-unicast"] !== void 0) {
        const err7 = { instancePath: instancePath + "/multicast-to-unicast", schemaPath: "#/allOf/1/then/properties/multicast-to-unicast/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    var _valid1 = _errs10 === errors;
    valid4 = _valid1;
    if (valid4) {
      var props1 = {};
      props1["basic-rate"] = true;
      props1["multicast-to-unicast"] = true;
      props1.kind = true;
    }
  }
  if (!valid4) {
    const err8 = { instancePath, schemaPath: "#/allOf/1/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  if (props0 !== true && props1 !== void 0) {
    if (props1 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props1);
    }
  }
  const _errs12 = errors;
  let valid7 = true;
  const _errs13 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing2;
    if (data.kind === void 0 && (missing2 = "kind")) {
      const err9 = {};
      if (vErrors === null) {
        vErrors = [err9];
      } else {
        vErrors.push(err9);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data5 = data.kind;
        if (!(data5 === "switch" || data5 === "router" || data5 === "access-point" || data5 === "media-converter" || data5 === "server" || data5 === "camera" || data5 === "tuner" || data5 === "patch-panel")) {
          const err10 = {};
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      }
    }
  }
  var _valid2 = _errs13 === errors;
  errors = _errs12;
  if (vErrors !== null) {
    if (_errs12) {
      vErrors.length = _errs12;
    } else {
      vErrors = null;
    }
  }
  if (_valid2) {
    const _errs15 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.decoders !== void 0) {
        const err11 = { instancePath: instancePath + "/decoders", schemaPath: "#/allOf/2/then/properties/decoders/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
      if (data.decodes !== void 0) {
        const err12 = { instancePath: instancePath + "/decodes", schemaPath: "#/allOf/2/then/properties/decodes/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    var _valid2 = _errs15 === errors;
    valid7 = _valid2;
    if (valid7) {
      var props2 = {};
      props2.decoders = true;
      props2.decodes = true;
      props2.kind = true;
    }
  }
  if (!valid7) {
    const err13 = { instancePath, schemaPath: "#/allOf/2/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  if (props0 !== true && props2 !== void 0) {
    if (props2 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props2);
    }
  }
  const _errs17 = errors;
  let valid10 = true;
  const _errs18 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing3;
    if (data.kind === void 0 && (missing3 = "kind")) {
      const err14 = {};
      if (vErrors === null) {
        vErrors = [err14];
      } else {
        vErrors.push(err14);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data8 = data.kind;
        if (!(data8 === "media-converter" || data8 === "server" || data8 === "camera" || data8 === "display" || data8 === "computer" || data8 === "tuner" || data8 === "patch-panel")) {
          const err15 = {};
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      }
    }
  }
  var _valid3 = _errs18 === errors;
  errors = _errs17;
  if (vErrors !== null) {
    if (_errs17) {
      vErrors.length = _errs17;
    } else {
      vErrors = null;
    }
  }
  if (_valid3) {
    const _errs20 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["igmp-snooping"] !== void 0) {
        const err16 = { instancePath: instancePath + "/igmp-snooping", schemaPath: "#/allOf/3/then/properties/igmp-snooping/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
      if (data["unregistered-multicast"] !== void 0) {
        const err17 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/allOf/3/then/properties/unregistered-multicast/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
      if (data["without-querier"] !== void 0) {
        const err18 = { instancePath: instancePath + "/without-querier", schemaPath: "#/allOf/3/then/properties/without-querier/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
      if (data["spanning-tree"] !== void 0) {
        const err19 = { instancePath: instancePath + "/spanning-tree", schemaPath: "#/allOf/3/then/properties/spanning-tree/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
      if (data["spanning-tree-priority"] !== void 0) {
        const err20 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/allOf/3/then/properties/spanning-tree-priority/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
      if (data.ports !== void 0) {
        let data14 = data.ports;
        if (data14 && typeof data14 == "object" && !Array.isArray(data14)) {
          for (const key0 in data14) {
            let data15 = data14[key0];
            if (data15 && typeof data15 == "object" && !Array.isArray(data15)) {
              if (data15["router-port"] !== void 0) {
                const err21 = { instancePath: instancePath + "/ports/" + key0.replace(/~/g, "~0").replace(/\//g, "~1") + "/router-port", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/router-port/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err21];
                } else {
                  vErrors.push(err21);
                }
                errors++;
              }
              if (data15["forward-reports"] !== void 0) {
                const err22 = { instancePath: instancePath + "/ports/" + key0.replace(/~/g, "~0").replace(/\//g, "~1") + "/forward-reports", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/forward-reports/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err22];
                } else {
                  vErrors.push(err22);
                }
                errors++;
              }
            } else {
              const err23 = { instancePath: instancePath + "/ports/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object" };
              if (vErrors === null) {
                vErrors = [err23];
              } else {
                vErrors.push(err23);
              }
              errors++;
            }
          }
        } else {
          const err24 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/3/then/properties/ports/type", keyword: "type", params: { type: "object" }, message: "must be object" };
          if (vErrors === null) {
            vErrors = [err24];
          } else {
            vErrors.push(err24);
          }
          errors++;
        }
      }
    }
    var _valid3 = _errs20 === errors;
    valid10 = _valid3;
    if (valid10) {
      var props3 = {};
      props3["igmp-snooping"] = true;
      props3["unregistered-multicast"] = true;
      props3["without-querier"] = true;
      props3["spanning-tree"] = true;
      props3["spanning-tree-priority"] = true;
      props3.ports = true;
      props3.kind = true;
    }
  }
  if (!valid10) {
    const err25 = { instancePath, schemaPath: "#/allOf/3/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err25];
    } else {
      vErrors.push(err25);
    }
    errors++;
  }
  if (props0 !== true && props3 !== void 0) {
    if (props3 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props3);
    }
  }
  const _errs27 = errors;
  let valid15 = true;
  const _errs28 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing4;
    if (data.kind === void 0 && (missing4 = "kind")) {
      const err26 = {};
      if (vErrors === null) {
        vErrors = [err26];
      } else {
        vErrors.push(err26);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data18 = data.kind;
        if (!(data18 === "access-point" || data18 === "media-converter" || data18 === "server" || data18 === "camera" || data18 === "display" || data18 === "computer" || data18 === "tuner" || data18 === "patch-panel")) {
          const err27 = {};
          if (vErrors === null) {
            vErrors = [err27];
          } else {
            vErrors.push(err27);
          }
          errors++;
        }
      }
    }
  }
  var _valid4 = _errs28 === errors;
  errors = _errs27;
  if (vErrors !== null) {
    if (_errs27) {
      vErrors.length = _errs27;
    } else {
      vErrors = null;
    }
  }
  if (_valid4) {
    const _errs30 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.routing !== void 0) {
        const err28 = { instancePath: instancePath + "/routing", schemaPath: "#/allOf/4/then/properties/routing/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
      if (data["multicast-routing"] !== void 0) {
        const err29 = { instancePath: instancePath + "/multicast-routing", schemaPath: "#/allOf/4/then/properties/multicast-routing/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
      if (data.addresses !== void 0) {
        const err30 = { instancePath: instancePath + "/addresses", schemaPath: "#/allOf/4/then/properties/addresses/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
    }
    var _valid4 = _errs30 === errors;
    valid15 = _valid4;
    if (valid15) {
      var props4 = {};
      props4.routing = true;
      props4["multicast-routing"] = true;
      props4.addresses = true;
      props4.kind = true;
    }
  }
  if (!valid15) {
    const err31 = { instancePath, schemaPath: "#/allOf/4/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err31];
    } else {
      vErrors.push(err31);
    }
    errors++;
  }
  if (props0 !== true && props4 !== void 0) {
    if (props4 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props4);
    }
  }
  const _errs32 = errors;
  let valid18 = true;
  const _errs33 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing5;
    if (data.kind === void 0 && (missing5 = "kind")) {
      const err32 = {};
      if (vErrors === null) {
        vErrors = [err32];
      } else {
        vErrors.push(err32);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data22 = data.kind;
        if (!(data22 === "camera" || data22 === "display" || data22 === "computer" || data22 === "tuner" || data22 === "patch-panel")) {
          const err33 = {};
          if (vErrors === null) {
            vErrors = [err33];
          } else {
            vErrors.push(err33);
          }
          errors++;
        }
      }
    }
  }
  var _valid5 = _errs33 === errors;
  errors = _errs32;
  if (vErrors !== null) {
    if (_errs32) {
      vErrors.length = _errs32;
    } else {
      vErrors = null;
    }
  }
  if (_valid5) {
    const _errs35 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["poe-budget"] !== void 0) {
        const err34 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/allOf/5/then/properties/poe-budget/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err34];
        } else {
          vErrors.push(err34);
        }
        errors++;
      }
    }
    var _valid5 = _errs35 === errors;
    valid18 = _valid5;
    if (valid18) {
      var props5 = {};
      props5["poe-budget"] = true;
      props5.kind = true;
    }
  }
  if (!valid18) {
    const err35 = { instancePath, schemaPath: "#/allOf/5/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err35];
    } else {
      vErrors.push(err35);
    }
    errors++;
  }
  if (props0 !== true && props5 !== void 0) {
    if (props5 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props5);
    }
  }
  const _errs37 = errors;
  let valid21 = true;
  const _errs38 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing6;
    if (data.kind === void 0 && (missing6 = "kind")) {
      const err36 = {};
      if (vErrors === null) {
        vErrors = [err36];
      } else {
        vErrors.push(err36);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data24 = data.kind;
        if (!(data24 === "media-converter" || data24 === "camera" || data24 === "display" || data24 === "tuner" || data24 === "patch-panel")) {
          const err37 = {};
          if (vErrors === null) {
            vErrors = [err37];
          } else {
            vErrors.push(err37);
          }
          errors++;
        }
      }
    }
  }
  var _valid6 = _errs38 === errors;
  errors = _errs37;
  if (vErrors !== null) {
    if (_errs37) {
      vErrors.length = _errs37;
    } else {
      vErrors = null;
    }
  }
  if (_valid6) {
    const _errs40 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.ports !== void 0) {
        let data25 = data.ports;
        if (data25 && typeof data25 == "object" && !Array.isArray(data25)) {
          for (const key1 in data25) {
            let data26 = data25[key1];
            if (data26 && typeof data26 == "object" && !Array.isArray(data26)) {
              if (data26.lag !== void 0) {
                const err38 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/lag", schemaPath: "#/allOf/6/then/properties/ports/additionalProperties/properties/lag/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err38];
                } else {
                  vErrors.push(err38);
                }
                errors++;
              }
              if (data26.lacp !== void 0) {
                const err39 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/lacp", schemaPath: "#/allOf/6/then/properties/ports/additionalProperties/properties/lacp/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err39];
                } else {
                  vErrors.push(err39);
                }
                errors++;
              }
            } else {
              const err40 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/6/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object" };
              if (vErrors === null) {
                vErrors = [err40];
              } else {
                vErrors.push(err40);
              }
              errors++;
            }
          }
        } else {
          const err41 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/6/then/properties/ports/type", keyword: "type", params: { type: "object" }, message: "must be object" };
          if (vErrors === null) {
            vErrors = [err41];
          } else {
            vErrors.push(err41);
          }
          errors++;
        }
      }
    }
    var _valid6 = _errs40 === errors;
    valid21 = _valid6;
    if (valid21) {
      var props6 = {};
      props6.ports = true;
      props6.kind = true;
    }
  }
  if (!valid21) {
    const err42 = { instancePath, schemaPath: "#/allOf/6/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err42];
    } else {
      vErrors.push(err42);
    }
    errors++;
  }
  if (props0 !== true && props6 !== void 0) {
    if (props6 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props6);
    }
  }
  const _errs47 = errors;
  let valid26 = true;
  const _errs48 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing7;
    if (data.kind === void 0 && (missing7 = "kind")) {
      const err43 = {};
      if (vErrors === null) {
        vErrors = [err43];
      } else {
        vErrors.push(err43);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        if (!(data.kind === "patch-panel")) {
          const err44 = {};
          if (vErrors === null) {
            vErrors = [err44];
          } else {
            vErrors.push(err44);
          }
          errors++;
        }
      }
    }
  }
  var _valid7 = _errs48 === errors;
  errors = _errs47;
  if (vErrors !== null) {
    if (_errs47) {
      vErrors.length = _errs47;
    } else {
      vErrors = null;
    }
  }
  if (_valid7) {
    const _errs50 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.address !== void 0) {
        const err45 = { instancePath: instancePath + "/address", schemaPath: "#/allOf/7/then/properties/address/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err45];
        } else {
          vErrors.push(err45);
        }
        errors++;
      }
      if (data.mac !== void 0) {
        const err46 = { instancePath: instancePath + "/mac", schemaPath: "#/allOf/7/then/properties/mac/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err46];
        } else {
          vErrors.push(err46);
        }
        errors++;
      }
      if (data.reserved !== void 0) {
        const err47 = { instancePath: instancePath + "/reserved", schemaPath: "#/allOf/7/then/properties/reserved/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err47];
        } else {
          vErrors.push(err47);
        }
        errors++;
      }
      if (data.interface !== void 0) {
        const err48 = { instancePath: instancePath + "/interface", schemaPath: "#/allOf/7/then/properties/interface/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err48];
        } else {
          vErrors.push(err48);
        }
        errors++;
      }
      if (data.speed !== void 0) {
        const err49 = { instancePath: instancePath + "/speed", schemaPath: "#/allOf/7/then/properties/speed/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err49];
        } else {
          vErrors.push(err49);
        }
        errors++;
      }
      if (data.poe !== void 0) {
        const err50 = { instancePath: instancePath + "/poe", schemaPath: "#/allOf/7/then/properties/poe/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err50];
        } else {
          vErrors.push(err50);
        }
        errors++;
      }
      if (data.routes !== void 0) {
        const err51 = { instancePath: instancePath + "/routes", schemaPath: "#/allOf/7/then/properties/routes/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
        if (vErrors === null) {
          vErrors = [err51];
        } else {
          vErrors.push(err51);
        }
        errors++;
      }
      if (data.ports !== void 0) {
        let data37 = data.ports;
        if (data37 && typeof data37 == "object" && !Array.isArray(data37)) {
          for (const key2 in data37) {
            let data38 = data37[key2];
            if (data38 && typeof data38 == "object" && !Array.isArray(data38)) {
              if (data38.speed !== void 0) {
                const err52 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/speed", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/speed/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err52];
                } else {
                  vErrors.push(err52);
                }
                errors++;
              }
              if (data38.vlan !== void 0) {
                const err53 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/vlan", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/vlan/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err53];
                } else {
                  vErrors.push(err53);
                }
                errors++;
              }
              if (data38.trunk !== void 0) {
                const err54 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/trunk", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/trunk/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err54];
                } else {
                  vErrors.push(err54);
                }
                errors++;
              }
              if (data38.native !== void 0) {
                const err55 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/native", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/native/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err55];
                } else {
                  vErrors.push(err55);
                }
                errors++;
              }
              if (data38.address !== void 0) {
                const err56 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/address", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/address/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err56];
                } else {
                  vErrors.push(err56);
                }
                errors++;
              }
              if (data38.addresses !== void 0) {
                const err57 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/addresses/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err57];
                } else {
                  vErrors.push(err57);
                }
                errors++;
              }
              if (data38.poe !== void 0) {
                const err58 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/poe/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err58];
                } else {
                  vErrors.push(err58);
                }
                errors++;
              }
              if (data38.mac !== void 0) {
                const err59 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/mac", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/mac/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err59];
                } else {
                  vErrors.push(err59);
                }
                errors++;
              }
              if (data38.reserved !== void 0) {
                const err60 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/reserved", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/reserved/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err60];
                } else {
                  vErrors.push(err60);
                }
                errors++;
              }
              if (data38.interface !== void 0) {
                const err61 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/interface", schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/properties/interface/false schema", keyword: "false schema", params: {}, message: "boolean schema is false" };
                if (vErrors === null) {
                  vErrors = [err61];
                } else {
                  vErrors.push(err61);
                }
                errors++;
              }
            } else {
              const err62 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/7/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" }, message: "must be object" };
              if (vErrors === null) {
                vErrors = [err62];
              } else {
                vErrors.push(err62);
              }
              errors++;
            }
          }
        } else {
          const err63 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/7/then/properties/ports/type", keyword: "type", params: { type: "object" }, message: "must be object" };
          if (vErrors === null) {
            vErrors = [err63];
          } else {
            vErrors.push(err63);
          }
          errors++;
        }
      }
    }
    var _valid7 = _errs50 === errors;
    valid26 = _valid7;
    if (valid26) {
      var props7 = {};
      props7.address = true;
      props7.mac = true;
      props7.reserved = true;
      props7.interface = true;
      props7.speed = true;
      props7.poe = true;
      props7.routes = true;
      props7.ports = true;
      props7.kind = true;
    }
  }
  if (!valid26) {
    const err64 = { instancePath, schemaPath: "#/allOf/7/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
    if (vErrors === null) {
      vErrors = [err64];
    } else {
      vErrors.push(err64);
    }
    errors++;
  }
  if (props0 !== true && props7 !== void 0) {
    if (props7 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props7);
    }
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err65 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'" };
      if (vErrors === null) {
        vErrors = [err65];
      } else {
        vErrors.push(err65);
      }
      errors++;
    }
    for (const key3 in data) {
      if (!func1.call(schema39.properties, key3)) {
        const err66 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err66];
        } else {
          vErrors.push(err66);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data49 = data.kind;
      if (typeof data49 !== "string") {
        const err67 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err67];
        } else {
          vErrors.push(err67);
        }
        errors++;
      }
      if (!(data49 === "switch" || data49 === "router" || data49 === "access-point" || data49 === "media-converter" || data49 === "server" || data49 === "camera" || data49 === "display" || data49 === "computer" || data49 === "tuner" || data49 === "patch-panel")) {
        const err68 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/enum", keyword: "enum", params: { allowedValues: schema39.properties.kind.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err68];
        } else {
          vErrors.push(err68);
        }
        errors++;
      }
    }
    if (data["igmp-snooping"] !== void 0) {
      if (typeof data["igmp-snooping"] !== "boolean") {
        const err69 = { instancePath: instancePath + "/igmp-snooping", schemaPath: "#/properties/igmp-snooping/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err69];
        } else {
          vErrors.push(err69);
        }
        errors++;
      }
    }
    if (data["unregistered-multicast"] !== void 0) {
      let data51 = data["unregistered-multicast"];
      if (typeof data51 !== "string") {
        const err70 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/properties/unregistered-multicast/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err70];
        } else {
          vErrors.push(err70);
        }
        errors++;
      }
      if (!(data51 === "flood" || data51 === "drop")) {
        const err71 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/properties/unregistered-multicast/enum", keyword: "enum", params: { allowedValues: schema39.properties["unregistered-multicast"].enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err71];
        } else {
          vErrors.push(err71);
        }
        errors++;
      }
    }
    if (data["without-querier"] !== void 0) {
      let data52 = data["without-querier"];
      if (typeof data52 !== "string") {
        const err72 = { instancePath: instancePath + "/without-querier", schemaPath: "#/properties/without-querier/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err72];
        } else {
          vErrors.push(err72);
        }
        errors++;
      }
      if (!(data52 === "by-reports" || data52 === "flood")) {
        const err73 = { instancePath: instancePath + "/without-querier", schemaPath: "#/properties/without-querier/enum", keyword: "enum", params: { allowedValues: schema39.properties["without-querier"].enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err73];
        } else {
          vErrors.push(err73);
        }
        errors++;
      }
    }
    if (data["spanning-tree"] !== void 0) {
      if (typeof data["spanning-tree"] !== "boolean") {
        const err74 = { instancePath: instancePath + "/spanning-tree", schemaPath: "#/properties/spanning-tree/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err74];
        } else {
          vErrors.push(err74);
        }
        errors++;
      }
    }
    if (data["spanning-tree-priority"] !== void 0) {
      let data54 = data["spanning-tree-priority"];
      if (!(typeof data54 == "number" && (!(data54 % 1) && !isNaN(data54)) && isFinite(data54))) {
        const err75 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err75];
        } else {
          vErrors.push(err75);
        }
        errors++;
      }
      if (typeof data54 == "number" && isFinite(data54)) {
        if (data54 > 61440 || isNaN(data54)) {
          const err76 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/maximum", keyword: "maximum", params: { comparison: "<=", limit: 61440 }, message: "must be <= 61440" };
          if (vErrors === null) {
            vErrors = [err76];
          } else {
            vErrors.push(err76);
          }
          errors++;
        }
        if (data54 < 0 || isNaN(data54)) {
          const err77 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0" };
          if (vErrors === null) {
            vErrors = [err77];
          } else {
            vErrors.push(err77);
          }
          errors++;
        }
        let res0;
        if (res0 = data54 / 4096, res0 !== parseInt(res0)) {
          const err78 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/multipleOf", keyword: "multipleOf", params: { multipleOf: 4096 }, message: "must be multiple of 4096" };
          if (vErrors === null) {
            vErrors = [err78];
          } else {
            vErrors.push(err78);
          }
          errors++;
        }
      }
    }
    if (data["poe-budget"] !== void 0) {
      let data55 = data["poe-budget"];
      if (typeof data55 === "string") {
        if (!pattern11.test(data55)) {
          const err79 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? W$"' };
          if (vErrors === null) {
            vErrors = [err79];
          } else {
            vErrors.push(err79);
          }
          errors++;
        }
      } else {
        const err80 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err80];
        } else {
          vErrors.push(err80);
        }
        errors++;
      }
    }
    if (data.routing !== void 0) {
      if (typeof data.routing !== "boolean") {
        const err81 = { instancePath: instancePath + "/routing", schemaPath: "#/properties/routing/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err81];
        } else {
          vErrors.push(err81);
        }
        errors++;
      }
    }
    if (data["multicast-routing"] !== void 0) {
      if (typeof data["multicast-routing"] !== "boolean") {
        const err82 = { instancePath: instancePath + "/multicast-routing", schemaPath: "#/properties/multicast-routing/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err82];
        } else {
          vErrors.push(err82);
        }
        errors++;
      }
    }
    if (data.ports !== void 0) {
      let data58 = data.ports;
      if (data58 && typeof data58 == "object" && !Array.isArray(data58)) {
        if (Object.keys(data58).length < 1) {
          const err83 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties" };
          if (vErrors === null) {
            vErrors = [err83];
          } else {
            vErrors.push(err83);
          }
          errors++;
        }
        for (const key4 in data58) {
          const _errs78 = errors;
          if (typeof key4 === "string") {
            if (func2(key4) > 63) {
              const err84 = { instancePath: instancePath + "/ports", schemaPath: "#/$defs/name/maxLength", keyword: "maxLength", params: { limit: 63 }, message: "must NOT have more than 63 characters", propertyName: key4 };
              if (vErrors === null) {
                vErrors = [err84];
              } else {
                vErrors.push(err84);
              }
              errors++;
            }
            if (!pattern5.test(key4)) {
              const err85 = { instancePath: instancePath + "/ports", schemaPath: "#/$defs/name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" }, message: 'must match pattern "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$"', propertyName: key4 };
              if (vErrors === null) {
                vErrors = [err85];
              } else {
                vErrors.push(err85);
              }
              errors++;
            }
          } else {
            const err86 = { instancePath: instancePath + "/ports", schemaPath: "#/$defs/name/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key4 };
            if (vErrors === null) {
              vErrors = [err86];
            } else {
              vErrors.push(err86);
            }
            errors++;
          }
          var valid33 = _errs78 === errors;
          if (!valid33) {
            const err87 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/propertyNames", keyword: "propertyNames", params: { propertyName: key4 }, message: "property name must be valid" };
            if (vErrors === null) {
              vErrors = [err87];
            } else {
              vErrors.push(err87);
            }
            errors++;
          }
        }
        for (const key5 in data58) {
          if (!validate24(data58[key5], { instancePath: instancePath + "/ports/" + key5.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data58, parentDataProperty: key5, rootData, dynamicAnchors })) {
            vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err88 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err88];
        } else {
          vErrors.push(err88);
        }
        errors++;
      }
    }
    if (data.address !== void 0) {
      let data60 = data.address;
      if (typeof data60 === "string") {
        if (!pattern17.test(data60)) {
          const err89 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, message: 'must match pattern "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$"' };
          if (vErrors === null) {
            vErrors = [err89];
          } else {
            vErrors.push(err89);
          }
          errors++;
        }
      } else {
        const err90 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err90];
        } else {
          vErrors.push(err90);
        }
        errors++;
      }
    }
    if (data.addresses !== void 0) {
      let data61 = data.addresses;
      if (data61 && typeof data61 == "object" && !Array.isArray(data61)) {
        if (Object.keys(data61).length < 1) {
          const err91 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties" };
          if (vErrors === null) {
            vErrors = [err91];
          } else {
            vErrors.push(err91);
          }
          errors++;
        }
        for (const key6 in data61) {
          const _errs88 = errors;
          if (typeof key6 === "string") {
            if (!pattern7.test(key6)) {
              const err92 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"', propertyName: key6 };
              if (vErrors === null) {
                vErrors = [err92];
              } else {
                vErrors.push(err92);
              }
              errors++;
            }
          } else {
            const err93 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key6 };
            if (vErrors === null) {
              vErrors = [err93];
            } else {
              vErrors.push(err93);
            }
            errors++;
          }
          var valid37 = _errs88 === errors;
          if (!valid37) {
            const err94 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/propertyNames", keyword: "propertyNames", params: { propertyName: key6 }, message: "property name must be valid" };
            if (vErrors === null) {
              vErrors = [err94];
            } else {
              vErrors.push(err94);
            }
            errors++;
          }
        }
        for (const key7 in data61) {
          let data62 = data61[key7];
          if (typeof data62 === "string") {
            if (!pattern17.test(data62)) {
              const err95 = { instancePath: instancePath + "/addresses/" + key7.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, message: 'must match pattern "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$"' };
              if (vErrors === null) {
                vErrors = [err95];
              } else {
                vErrors.push(err95);
              }
              errors++;
            }
          } else {
            const err96 = { instancePath: instancePath + "/addresses/" + key7.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err96];
            } else {
              vErrors.push(err96);
            }
            errors++;
          }
        }
      } else {
        const err97 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err97];
        } else {
          vErrors.push(err97);
        }
        errors++;
      }
    }
    if (data.mac !== void 0) {
      let data63 = data.mac;
      if (typeof data63 === "string") {
        if (!pattern21.test(data63)) {
          const err98 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/pattern", keyword: "pattern", params: { pattern: "^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$" }, message: 'must match pattern "^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$"' };
          if (vErrors === null) {
            vErrors = [err98];
          } else {
            vErrors.push(err98);
          }
          errors++;
        }
      } else {
        const err99 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err99];
        } else {
          vErrors.push(err99);
        }
        errors++;
      }
    }
    if (data.reserved !== void 0) {
      if (typeof data.reserved !== "boolean") {
        const err100 = { instancePath: instancePath + "/reserved", schemaPath: "#/properties/reserved/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err100];
        } else {
          vErrors.push(err100);
        }
        errors++;
      }
    }
    if (data.interface !== void 0) {
      let data65 = data.interface;
      if (typeof data65 === "string") {
        if (!pattern22.test(data65)) {
          const err101 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/pattern", keyword: "pattern", params: { pattern: "^[^\\s/:]{1,15}$" }, message: 'must match pattern "^[^\\s/:]{1,15}$"' };
          if (vErrors === null) {
            vErrors = [err101];
          } else {
            vErrors.push(err101);
          }
          errors++;
        }
      } else {
        const err102 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err102];
        } else {
          vErrors.push(err102);
        }
        errors++;
      }
    }
    if (data.speed !== void 0) {
      let data66 = data.speed;
      if (typeof data66 === "string") {
        if (!pattern13.test(data66)) {
          const err103 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err103];
          } else {
            vErrors.push(err103);
          }
          errors++;
        }
      } else {
        const err104 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err104];
        } else {
          vErrors.push(err104);
        }
        errors++;
      }
    }
    if (data.poe !== void 0) {
      if (!validate25(data.poe, { instancePath: instancePath + "/poe", parentData: data, parentDataProperty: "poe", rootData, dynamicAnchors })) {
        vErrors = vErrors === null ? validate25.errors : vErrors.concat(validate25.errors);
        errors = vErrors.length;
      }
    }
    if (data["basic-rate"] !== void 0) {
      let data68 = data["basic-rate"];
      if (typeof data68 === "string") {
        if (!pattern13.test(data68)) {
          const err105 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err105];
          } else {
            vErrors.push(err105);
          }
          errors++;
        }
      } else {
        const err106 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err106];
        } else {
          vErrors.push(err106);
        }
        errors++;
      }
      if (!(data68 === "1 Mb/s" || data68 === "2 Mb/s" || data68 === "5.5 Mb/s" || data68 === "6 Mb/s" || data68 === "9 Mb/s" || data68 === "11 Mb/s" || data68 === "12 Mb/s" || data68 === "18 Mb/s" || data68 === "24 Mb/s" || data68 === "36 Mb/s" || data68 === "48 Mb/s" || data68 === "54 Mb/s")) {
        const err107 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/properties/basic-rate/enum", keyword: "enum", params: { allowedValues: schema39.properties["basic-rate"].enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err107];
        } else {
          vErrors.push(err107);
        }
        errors++;
      }
    }
    if (data["multicast-to-unicast"] !== void 0) {
      if (typeof data["multicast-to-unicast"] !== "boolean") {
        const err108 = { instancePath: instancePath + "/multicast-to-unicast", schemaPath: "#/properties/multicast-to-unicast/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err108];
        } else {
          vErrors.push(err108);
        }
        errors++;
      }
    }
    if (data.sessions !== void 0) {
      let data70 = data.sessions;
      if (!(typeof data70 == "number" && (!(data70 % 1) && !isNaN(data70)) && isFinite(data70))) {
        const err109 = { instancePath: instancePath + "/sessions", schemaPath: "#/properties/sessions/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err109];
        } else {
          vErrors.push(err109);
        }
        errors++;
      }
      if (typeof data70 == "number" && isFinite(data70)) {
        if (data70 < 1 || isNaN(data70)) {
          const err110 = { instancePath: instancePath + "/sessions", schemaPath: "#/properties/sessions/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err110];
          } else {
            vErrors.push(err110);
          }
          errors++;
        }
      }
    }
    if (data.decoders !== void 0) {
      let data71 = data.decoders;
      if (!(typeof data71 == "number" && (!(data71 % 1) && !isNaN(data71)) && isFinite(data71))) {
        const err111 = { instancePath: instancePath + "/decoders", schemaPath: "#/properties/decoders/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err111];
        } else {
          vErrors.push(err111);
        }
        errors++;
      }
      if (typeof data71 == "number" && isFinite(data71)) {
        if (data71 < 1 || isNaN(data71)) {
          const err112 = { instancePath: instancePath + "/decoders", schemaPath: "#/properties/decoders/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err112];
          } else {
            vErrors.push(err112);
          }
          errors++;
        }
      }
    }
    if (data.decodes !== void 0) {
      if (!validate29(data.decodes, { instancePath: instancePath + "/decodes", parentData: data, parentDataProperty: "decodes", rootData, dynamicAnchors })) {
        vErrors = vErrors === null ? validate29.errors : vErrors.concat(validate29.errors);
        errors = vErrors.length;
      }
    }
    if (data.routes !== void 0) {
      let data73 = data.routes;
      if (Array.isArray(data73)) {
        const len0 = data73.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (!validate31(data73[i0], { instancePath: instancePath + "/routes/" + i0, parentData: data73, parentDataProperty: i0, rootData, dynamicAnchors })) {
            vErrors = vErrors === null ? validate31.errors : vErrors.concat(validate31.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err113 = { instancePath: instancePath + "/routes", schemaPath: "#/properties/routes/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err113];
        } else {
          vErrors.push(err113);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err114 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err114];
        } else {
          vErrors.push(err114);
        }
        errors++;
      }
    }
    if (data.model !== void 0) {
      if (typeof data.model !== "string") {
        const err115 = { instancePath: instancePath + "/model", schemaPath: "#/properties/model/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err115];
        } else {
          vErrors.push(err115);
        }
        errors++;
      }
    }
    if (data.location !== void 0) {
      if (typeof data.location !== "string") {
        const err116 = { instancePath: instancePath + "/location", schemaPath: "#/properties/location/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err116];
        } else {
          vErrors.push(err116);
        }
        errors++;
      }
    }
    if (data.building !== void 0) {
      let data78 = data.building;
      if (typeof data78 === "string") {
        if (func2(data78) < 1) {
          const err117 = { instancePath: instancePath + "/building", schemaPath: "#/properties/building/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
          if (vErrors === null) {
            vErrors = [err117];
          } else {
            vErrors.push(err117);
          }
          errors++;
        }
      } else {
        const err118 = { instancePath: instancePath + "/building", schemaPath: "#/properties/building/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err118];
        } else {
          vErrors.push(err118);
        }
        errors++;
      }
    }
  } else {
    const err119 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err119];
    } else {
      vErrors.push(err119);
    }
    errors++;
  }
  validate54.errors = vErrors;
  return errors === 0;
}
validate54.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var cables = validate59;
var schema66 = { "type": "object", "additionalProperties": false, "required": ["from", "to"], "properties": { "from": { "$ref": "#/$defs/port-end" }, "to": { "$ref": "#/$defs/port-end" }, "type": { "type": "string", "enum": ["cat5", "cat5e", "cat6", "cat6a", "cat7", "cat8", "om1", "om2", "om3", "om4", "om5", "os2", "dac"] }, "length": { "$ref": "#/$defs/length" }, "through": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/port-end", "type": "string" } }, "label": { "type": "string" }, "description": { "type": "string" } } };
var pattern36 = new RegExp("^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$", "u");
var pattern38 = new RegExp("^[0-9]+(\\.[0-9]+)? m$", "u");
function validate59(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate59.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.from === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.to === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'" };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "from" || key0 === "to" || key0 === "type" || key0 === "length" || key0 === "through" || key0 === "label" || key0 === "description")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.from !== void 0) {
      let data0 = data.from;
      if (typeof data0 === "string") {
        if (!pattern36.test(data0)) {
          const err3 = { instancePath: instancePath + "/from", schemaPath: "#/$defs/port-end/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$" }, message: 'must match pattern "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/from", schemaPath: "#/$defs/port-end/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      let data1 = data.to;
      if (typeof data1 === "string") {
        if (!pattern36.test(data1)) {
          const err5 = { instancePath: instancePath + "/to", schemaPath: "#/$defs/port-end/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$" }, message: 'must match pattern "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$"' };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/to", schemaPath: "#/$defs/port-end/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.type !== void 0) {
      let data2 = data.type;
      if (typeof data2 !== "string") {
        const err7 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
      if (!(data2 === "cat5" || data2 === "cat5e" || data2 === "cat6" || data2 === "cat6a" || data2 === "cat7" || data2 === "cat8" || data2 === "om1" || data2 === "om2" || data2 === "om3" || data2 === "om4" || data2 === "om5" || data2 === "os2" || data2 === "dac")) {
        const err8 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/enum", keyword: "enum", params: { allowedValues: schema66.properties.type.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.length !== void 0) {
      let data3 = data.length;
      if (typeof data3 === "string") {
        if (!pattern38.test(data3)) {
          const err9 = { instancePath: instancePath + "/length", schemaPath: "#/$defs/length/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? m$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? m$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/length", schemaPath: "#/$defs/length/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.through !== void 0) {
      let data4 = data.through;
      if (Array.isArray(data4)) {
        const len0 = data4.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data5 = data4[i0];
          if (typeof data5 !== "string") {
            const err11 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/properties/through/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
          if (typeof data5 === "string") {
            if (!pattern36.test(data5)) {
              const err12 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/$defs/port-end/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$" }, message: 'must match pattern "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$"' };
              if (vErrors === null) {
                vErrors = [err12];
              } else {
                vErrors.push(err12);
              }
              errors++;
            }
          } else {
            const err13 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/$defs/port-end/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
        }
        let i1 = data4.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data4[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err14 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err15 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data.label !== void 0) {
      if (typeof data.label !== "string") {
        const err16 = { instancePath: instancePath + "/label", schemaPath: "#/properties/label/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err17 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
  } else {
    const err18 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err18];
    } else {
      vErrors.push(err18);
    }
    errors++;
  }
  validate59.errors = vErrors;
  return errors === 0;
}
validate59.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var streams = validate60;
var schema72 = { "type": "object", "additionalProperties": false, "required": ["source"], "properties": { "source": { "$ref": "#/$defs/device-name" }, "carries": { "$ref": "#/$defs/stream-name" }, "transport": { "type": "string", "enum": ["rtsp", "rtp", "ts-udp", "ts-rtp"] }, "port": { "type": ["integer", "string"], "pattern": "^auto$", "minimum": 1, "maximum": 65535 }, "path": { "type": "string", "pattern": "^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$" }, "credentials": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "group": { "type": "string", "pattern": "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, "ttl": { "type": "integer", "minimum": 1, "maximum": 255 }, "video": { "$ref": "#/$defs/video" }, "audio": { "$ref": "#/$defs/audio" }, "receivers": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/device-name", "type": "string" } }, "packet-size": { "$ref": "#/$defs/size" }, "mux-rate": { "$ref": "#/$defs/bit-rate" }, "egress": { "$ref": "#/$defs/own-port" }, "description": { "type": "string" } } };
var pattern43 = new RegExp("^auto$", "u");
var pattern44 = new RegExp("^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$", "u");
var pattern55 = new RegExp("^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$", "u");
var pattern50 = new RegExp("^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$", "u");
function validate37(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate37.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "codec" || key0 === "size" || key0 === "frame-rate" || key0 === "bitrate" || key0 === "peak-bitrate" || key0 === "keyframe-interval")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.codec !== void 0) {
      let data0 = data.codec;
      if (typeof data0 !== "string") {
        const err1 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/video-codec/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (!(data0 === "h264" || data0 === "h265" || data0 === "mpeg2" || data0 === "mjpeg" || data0 === "av1" || data0 === "vp9")) {
        const err2 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/video-codec/enum", keyword: "enum", params: { allowedValues: schema60.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.size !== void 0) {
      let data1 = data.size;
      if (typeof data1 === "string") {
        if (!pattern31.test(data1)) {
          const err3 = { instancePath: instancePath + "/size", schemaPath: "#/properties/size/pattern", keyword: "pattern", params: { pattern: "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$" }, message: 'must match pattern "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/size", schemaPath: "#/properties/size/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data["frame-rate"] !== void 0) {
      let data2 = data["frame-rate"];
      if (typeof data2 == "number" && isFinite(data2)) {
        if (data2 <= 0 || isNaN(data2)) {
          const err5 = { instancePath: instancePath + "/frame-rate", schemaPath: "#/properties/frame-rate/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0" };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/frame-rate", schemaPath: "#/properties/frame-rate/type", keyword: "type", params: { type: "number" }, message: "must be number" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.bitrate !== void 0) {
      let data3 = data.bitrate;
      if (typeof data3 === "string") {
        if (!pattern13.test(data3)) {
          const err7 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data["peak-bitrate"] !== void 0) {
      let data4 = data["peak-bitrate"];
      if (typeof data4 === "string") {
        if (!pattern13.test(data4)) {
          const err9 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data["keyframe-interval"] !== void 0) {
      let data5 = data["keyframe-interval"];
      if (typeof data5 === "string") {
        if (!pattern50.test(data5)) {
          const err11 = { instancePath: instancePath + "/keyframe-interval", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/keyframe-interval", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate37.errors = vErrors;
  return errors === 0;
}
validate37.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var pattern53 = new RegExp("^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$", "u");
function validate39(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate39.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "codec" || key0 === "bitrate" || key0 === "peak-bitrate" || key0 === "sample-rate" || key0 === "channels")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.codec !== void 0) {
      let data0 = data.codec;
      if (typeof data0 !== "string") {
        const err1 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/audio-codec/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (!(data0 === "pcma" || data0 === "pcmu" || data0 === "g722" || data0 === "aac" || data0 === "opus" || data0 === "mp2" || data0 === "ac3" || data0 === "l16")) {
        const err2 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/audio-codec/enum", keyword: "enum", params: { allowedValues: schema61.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.bitrate !== void 0) {
      let data1 = data.bitrate;
      if (typeof data1 === "string") {
        if (!pattern13.test(data1)) {
          const err3 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data["peak-bitrate"] !== void 0) {
      let data2 = data["peak-bitrate"];
      if (typeof data2 === "string") {
        if (!pattern13.test(data2)) {
          const err5 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["sample-rate"] !== void 0) {
      let data3 = data["sample-rate"];
      if (typeof data3 === "string") {
        if (!pattern53.test(data3)) {
          const err7 = { instancePath: instancePath + "/sample-rate", schemaPath: "#/$defs/frequency/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/sample-rate", schemaPath: "#/$defs/frequency/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.channels !== void 0) {
      let data4 = data.channels;
      if (!(typeof data4 == "number" && (!(data4 % 1) && !isNaN(data4)) && isFinite(data4))) {
        const err9 = { instancePath: instancePath + "/channels", schemaPath: "#/properties/channels/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
      if (typeof data4 == "number" && isFinite(data4)) {
        if (data4 < 1 || isNaN(data4)) {
          const err10 = { instancePath: instancePath + "/channels", schemaPath: "#/properties/channels/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      }
    }
  } else {
    const err11 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err11];
    } else {
      vErrors.push(err11);
    }
    errors++;
  }
  validate39.errors = vErrors;
  return errors === 0;
}
validate39.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate60(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate60.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.source === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "source" }, message: "must have required property 'source'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func1.call(schema72.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.source !== void 0) {
      let data0 = data.source;
      if (typeof data0 === "string") {
        if (!pattern7.test(data0)) {
          const err2 = { instancePath: instancePath + "/source", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/source", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.carries !== void 0) {
      let data1 = data.carries;
      if (typeof data1 === "string") {
        if (!pattern7.test(data1)) {
          const err4 = { instancePath: instancePath + "/carries", schemaPath: "#/$defs/stream-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/carries", schemaPath: "#/$defs/stream-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.transport !== void 0) {
      let data2 = data.transport;
      if (typeof data2 !== "string") {
        const err6 = { instancePath: instancePath + "/transport", schemaPath: "#/properties/transport/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (!(data2 === "rtsp" || data2 === "rtp" || data2 === "ts-udp" || data2 === "ts-rtp")) {
        const err7 = { instancePath: instancePath + "/transport", schemaPath: "#/properties/transport/enum", keyword: "enum", params: { allowedValues: schema72.properties.transport.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.port !== void 0) {
      let data3 = data.port;
      if (!(typeof data3 == "number" && (!(data3 % 1) && !isNaN(data3)) && isFinite(data3)) && typeof data3 !== "string") {
        const err8 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/type", keyword: "type", params: { type: schema72.properties.port.type }, message: "must be integer,string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 > 65535 || isNaN(data3)) {
          const err9 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/maximum", keyword: "maximum", params: { comparison: "<=", limit: 65535 }, message: "must be <= 65535" };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        if (data3 < 1 || isNaN(data3)) {
          const err10 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      }
      if (typeof data3 === "string") {
        if (!pattern43.test(data3)) {
          const err11 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/pattern", keyword: "pattern", params: { pattern: "^auto$" }, message: 'must match pattern "^auto$"' };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      }
    }
    if (data.path !== void 0) {
      let data4 = data.path;
      if (typeof data4 === "string") {
        if (!pattern44.test(data4)) {
          const err12 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/pattern", keyword: "pattern", params: { pattern: "^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$" }, message: 'must match pattern "^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$"' };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      } else {
        const err13 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data.credentials !== void 0) {
      let data5 = data.credentials;
      if (typeof data5 === "string") {
        if (!pattern7.test(data5)) {
          const err14 = { instancePath: instancePath + "/credentials", schemaPath: "#/properties/credentials/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
      } else {
        const err15 = { instancePath: instancePath + "/credentials", schemaPath: "#/properties/credentials/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data.group !== void 0) {
      let data6 = data.group;
      if (typeof data6 === "string") {
        if (!pattern17.test(data6)) {
          const err16 = { instancePath: instancePath + "/group", schemaPath: "#/properties/group/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, message: 'must match pattern "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$"' };
          if (vErrors === null) {
            vErrors = [err16];
          } else {
            vErrors.push(err16);
          }
          errors++;
        }
      } else {
        const err17 = { instancePath: instancePath + "/group", schemaPath: "#/properties/group/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.ttl !== void 0) {
      let data7 = data.ttl;
      if (!(typeof data7 == "number" && (!(data7 % 1) && !isNaN(data7)) && isFinite(data7))) {
        const err18 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
      if (typeof data7 == "number" && isFinite(data7)) {
        if (data7 > 255 || isNaN(data7)) {
          const err19 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/maximum", keyword: "maximum", params: { comparison: "<=", limit: 255 }, message: "must be <= 255" };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
        if (data7 < 1 || isNaN(data7)) {
          const err20 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err20];
          } else {
            vErrors.push(err20);
          }
          errors++;
        }
      }
    }
    if (data.video !== void 0) {
      if (!validate37(data.video, { instancePath: instancePath + "/video", parentData: data, parentDataProperty: "video", rootData, dynamicAnchors })) {
        vErrors = vErrors === null ? validate37.errors : vErrors.concat(validate37.errors);
        errors = vErrors.length;
      }
    }
    if (data.audio !== void 0) {
      if (!validate39(data.audio, { instancePath: instancePath + "/audio", parentData: data, parentDataProperty: "audio", rootData, dynamicAnchors })) {
        vErrors = vErrors === null ? validate39.errors : vErrors.concat(validate39.errors);
        errors = vErrors.length;
      }
    }
    if (data.receivers !== void 0) {
      let data10 = data.receivers;
      if (Array.isArray(data10)) {
        const len0 = data10.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data11 = data10[i0];
          if (typeof data11 !== "string") {
            const err21 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/properties/receivers/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
          if (typeof data11 === "string") {
            if (!pattern7.test(data11)) {
              const err22 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
              if (vErrors === null) {
                vErrors = [err22];
              } else {
                vErrors.push(err22);
              }
              errors++;
            }
          } else {
            const err23 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
        let i1 = data10.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data10[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err24 = { instancePath: instancePath + "/receivers", schemaPath: "#/properties/receivers/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err24];
              } else {
                vErrors.push(err24);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err25 = { instancePath: instancePath + "/receivers", schemaPath: "#/properties/receivers/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err25];
        } else {
          vErrors.push(err25);
        }
        errors++;
      }
    }
    if (data["packet-size"] !== void 0) {
      let data12 = data["packet-size"];
      if (typeof data12 === "string") {
        if (!pattern55.test(data12)) {
          const err26 = { instancePath: instancePath + "/packet-size", schemaPath: "#/$defs/size/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$"' };
          if (vErrors === null) {
            vErrors = [err26];
          } else {
            vErrors.push(err26);
          }
          errors++;
        }
      } else {
        const err27 = { instancePath: instancePath + "/packet-size", schemaPath: "#/$defs/size/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
    if (data["mux-rate"] !== void 0) {
      let data13 = data["mux-rate"];
      if (typeof data13 === "string") {
        if (!pattern13.test(data13)) {
          const err28 = { instancePath: instancePath + "/mux-rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err28];
          } else {
            vErrors.push(err28);
          }
          errors++;
        }
      } else {
        const err29 = { instancePath: instancePath + "/mux-rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
    }
    if (data.egress !== void 0) {
      let data14 = data.egress;
      if (typeof data14 !== "string" && !(typeof data14 == "number" && (!(data14 % 1) && !isNaN(data14)) && isFinite(data14))) {
        const err30 = { instancePath: instancePath + "/egress", schemaPath: "#/$defs/own-port/type", keyword: "type", params: { type: schema63.type }, message: "must be string,integer" };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
      if (typeof data14 === "string") {
        if (!pattern7.test(data14)) {
          const err31 = { instancePath: instancePath + "/egress", schemaPath: "#/$defs/own-port/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err31];
          } else {
            vErrors.push(err31);
          }
          errors++;
        }
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err32 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err32];
        } else {
          vErrors.push(err32);
        }
        errors++;
      }
    }
  } else {
    const err33 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err33];
    } else {
      vErrors.push(err33);
    }
    errors++;
  }
  validate60.errors = vErrors;
  return errors === 0;
}
validate60.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var volumes = validate63;
var schema90 = { "type": "object", "additionalProperties": false, "required": ["host", "capacity"], "properties": { "host": { "$ref": "#/$defs/device-name" }, "capacity": { "$ref": "#/$defs/size" }, "path": { "type": "string", "pattern": "^/" }, "disks": { "type": "integer", "minimum": 1 }, "redundancy": { "type": "string", "enum": ["none", "mirror", "raid5", "raid6", "raid10"] }, "reserve": { "$ref": "#/$defs/percentage" }, "sustained-write": { "$ref": "#/$defs/byte-rate" }, "description": { "type": "string" } } };
var pattern61 = new RegExp("^/", "u");
var pattern62 = new RegExp("^[0-9]+(\\.[0-9]+)? %$", "u");
var pattern63 = new RegExp("^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$", "u");
function validate63(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate63.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.host === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "host" }, message: "must have required property 'host'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.capacity === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "capacity" }, message: "must have required property 'capacity'" };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "host" || key0 === "capacity" || key0 === "path" || key0 === "disks" || key0 === "redundancy" || key0 === "reserve" || key0 === "sustained-write" || key0 === "description")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.host !== void 0) {
      let data0 = data.host;
      if (typeof data0 === "string") {
        if (!pattern7.test(data0)) {
          const err3 = { instancePath: instancePath + "/host", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/host", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.capacity !== void 0) {
      let data1 = data.capacity;
      if (typeof data1 === "string") {
        if (!pattern55.test(data1)) {
          const err5 = { instancePath: instancePath + "/capacity", schemaPath: "#/$defs/size/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$"' };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/capacity", schemaPath: "#/$defs/size/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.path !== void 0) {
      let data2 = data.path;
      if (typeof data2 === "string") {
        if (!pattern61.test(data2)) {
          const err7 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/pattern", keyword: "pattern", params: { pattern: "^/" }, message: 'must match pattern "^/"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.disks !== void 0) {
      let data3 = data.disks;
      if (!(typeof data3 == "number" && (!(data3 % 1) && !isNaN(data3)) && isFinite(data3))) {
        const err9 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 < 1 || isNaN(data3)) {
          const err10 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      }
    }
    if (data.redundancy !== void 0) {
      let data4 = data.redundancy;
      if (typeof data4 !== "string") {
        const err11 = { instancePath: instancePath + "/redundancy", schemaPath: "#/properties/redundancy/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
      if (!(data4 === "none" || data4 === "mirror" || data4 === "raid5" || data4 === "raid6" || data4 === "raid10")) {
        const err12 = { instancePath: instancePath + "/redundancy", schemaPath: "#/properties/redundancy/enum", keyword: "enum", params: { allowedValues: schema90.properties.redundancy.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.reserve !== void 0) {
      let data5 = data.reserve;
      if (typeof data5 === "string") {
        if (!pattern62.test(data5)) {
          const err13 = { instancePath: instancePath + "/reserve", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/reserve", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data["sustained-write"] !== void 0) {
      let data6 = data["sustained-write"];
      if (typeof data6 === "string") {
        if (!pattern63.test(data6)) {
          const err15 = { instancePath: instancePath + "/sustained-write", schemaPath: "#/$defs/byte-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$"' };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      } else {
        const err16 = { instancePath: instancePath + "/sustained-write", schemaPath: "#/$defs/byte-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err17 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
  } else {
    const err18 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err18];
    } else {
      vErrors.push(err18);
    }
    errors++;
  }
  validate63.errors = vErrors;
  return errors === 0;
}
validate63.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var recordings = validate64;
function validate64(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate64.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.stream === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "stream" }, message: "must have required property 'stream'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.volume === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "volume" }, message: "must have required property 'volume'" };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "stream" || key0 === "volume" || key0 === "segment" || key0 === "keep" || key0 === "file" || key0 === "description")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.stream !== void 0) {
      let data0 = data.stream;
      if (typeof data0 === "string") {
        if (!pattern7.test(data0)) {
          const err3 = { instancePath: instancePath + "/stream", schemaPath: "#/$defs/stream-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/stream", schemaPath: "#/$defs/stream-name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.volume !== void 0) {
      let data1 = data.volume;
      if (typeof data1 === "string") {
        if (!pattern7.test(data1)) {
          const err5 = { instancePath: instancePath + "/volume", schemaPath: "#/properties/volume/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/volume", schemaPath: "#/properties/volume/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.segment !== void 0) {
      let data2 = data.segment;
      if (typeof data2 === "string") {
        if (!pattern50.test(data2)) {
          const err7 = { instancePath: instancePath + "/segment", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/segment", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.keep !== void 0) {
      let data3 = data.keep;
      if (typeof data3 === "string") {
        if (!pattern50.test(data3)) {
          const err9 = { instancePath: instancePath + "/keep", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/keep", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.file !== void 0) {
      let data4 = data.file;
      if (typeof data4 === "string") {
        if (func2(data4) < 1) {
          const err11 = { instancePath: instancePath + "/file", schemaPath: "#/properties/file/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/file", schemaPath: "#/properties/file/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err13 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
  } else {
    const err14 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err14];
    } else {
      vErrors.push(err14);
    }
    errors++;
  }
  validate64.errors = vErrors;
  return errors === 0;
}
validate64.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var policies = validate65;
function validate47(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate47.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.recordings === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "recordings" }, message: "must have required property 'recordings'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "recordings" || key0 === "at-least" || key0 === "at-most" || key0 === "because")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.recordings !== void 0) {
      let data0 = data.recordings;
      if (Array.isArray(data0)) {
        if (data0.length < 1) {
          const err2 = { instancePath: instancePath + "/recordings", schemaPath: "#/properties/recordings/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items" };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
        const len0 = data0.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data1 = data0[i0];
          if (typeof data1 === "string") {
            if (!pattern7.test(data1)) {
              const err3 = { instancePath: instancePath + "/recordings/" + i0, schemaPath: "#/properties/recordings/items/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
              if (vErrors === null) {
                vErrors = [err3];
              } else {
                vErrors.push(err3);
              }
              errors++;
            }
          } else {
            const err4 = { instancePath: instancePath + "/recordings/" + i0, schemaPath: "#/properties/recordings/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        let i1 = data0.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data0[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err5 = { instancePath: instancePath + "/recordings", schemaPath: "#/properties/recordings/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/recordings", schemaPath: "#/properties/recordings/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["at-least"] !== void 0) {
      let data2 = data["at-least"];
      if (typeof data2 === "string") {
        if (!pattern50.test(data2)) {
          const err7 = { instancePath: instancePath + "/at-least", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/at-least", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data["at-most"] !== void 0) {
      let data3 = data["at-most"];
      if (typeof data3 === "string") {
        if (!pattern50.test(data3)) {
          const err9 = { instancePath: instancePath + "/at-most", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/at-most", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.because !== void 0) {
      let data4 = data.because;
      if (typeof data4 === "string") {
        if (func2(data4) < 1) {
          const err11 = { instancePath: instancePath + "/because", schemaPath: "#/properties/because/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/because", schemaPath: "#/properties/because/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate47.errors = vErrors;
  return errors === 0;
}
validate47.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate65(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate65.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "link-load" || key0 === "airtime" || key0 === "volume-fill" || key0 === "retention")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data["link-load"] !== void 0) {
      let data0 = data["link-load"];
      if (data0 && typeof data0 == "object" && !Array.isArray(data0)) {
        for (const key1 in data0) {
          if (!(key1 === "warn" || key1 === "limit")) {
            const err1 = { instancePath: instancePath + "/link-load", schemaPath: "#/properties/link-load/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties" };
            if (vErrors === null) {
              vErrors = [err1];
            } else {
              vErrors.push(err1);
            }
            errors++;
          }
        }
        if (data0.warn !== void 0) {
          let data1 = data0.warn;
          if (typeof data1 === "string") {
            if (!pattern62.test(data1)) {
              const err2 = { instancePath: instancePath + "/link-load/warn", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err2];
              } else {
                vErrors.push(err2);
              }
              errors++;
            }
          } else {
            const err3 = { instancePath: instancePath + "/link-load/warn", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        if (data0.limit !== void 0) {
          let data2 = data0.limit;
          if (typeof data2 === "string") {
            if (!pattern62.test(data2)) {
              const err4 = { instancePath: instancePath + "/link-load/limit", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          } else {
            const err5 = { instancePath: instancePath + "/link-load/limit", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/link-load", schemaPath: "#/properties/link-load/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.airtime !== void 0) {
      let data3 = data.airtime;
      if (data3 && typeof data3 == "object" && !Array.isArray(data3)) {
        for (const key2 in data3) {
          if (!(key2 === "warn" || key2 === "limit")) {
            const err7 = { instancePath: instancePath + "/airtime", schemaPath: "#/properties/airtime/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties" };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
        if (data3.warn !== void 0) {
          let data4 = data3.warn;
          if (typeof data4 === "string") {
            if (!pattern62.test(data4)) {
              const err8 = { instancePath: instancePath + "/airtime/warn", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/airtime/warn", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data3.limit !== void 0) {
          let data5 = data3.limit;
          if (typeof data5 === "string") {
            if (!pattern62.test(data5)) {
              const err10 = { instancePath: instancePath + "/airtime/limit", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          } else {
            const err11 = { instancePath: instancePath + "/airtime/limit", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/airtime", schemaPath: "#/properties/airtime/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data["volume-fill"] !== void 0) {
      let data6 = data["volume-fill"];
      if (data6 && typeof data6 == "object" && !Array.isArray(data6)) {
        for (const key3 in data6) {
          if (!(key3 === "warn" || key3 === "limit")) {
            const err13 = { instancePath: instancePath + "/volume-fill", schemaPath: "#/properties/volume-fill/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties" };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
        }
        if (data6.warn !== void 0) {
          let data7 = data6.warn;
          if (typeof data7 === "string") {
            if (!pattern62.test(data7)) {
              const err14 = { instancePath: instancePath + "/volume-fill/warn", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          } else {
            const err15 = { instancePath: instancePath + "/volume-fill/warn", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        if (data6.limit !== void 0) {
          let data8 = data6.limit;
          if (typeof data8 === "string") {
            if (!pattern62.test(data8)) {
              const err16 = { instancePath: instancePath + "/volume-fill/limit", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
          } else {
            const err17 = { instancePath: instancePath + "/volume-fill/limit", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
      } else {
        const err18 = { instancePath: instancePath + "/volume-fill", schemaPath: "#/properties/volume-fill/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.retention !== void 0) {
      let data9 = data.retention;
      if (Array.isArray(data9)) {
        const len0 = data9.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (!validate47(data9[i0], { instancePath: instancePath + "/retention/" + i0, parentData: data9, parentDataProperty: i0, rootData, dynamicAnchors })) {
            vErrors = vErrors === null ? validate47.errors : vErrors.concat(validate47.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err19 = { instancePath: instancePath + "/retention", schemaPath: "#/properties/retention/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
  } else {
    const err20 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err20];
    } else {
      vErrors.push(err20);
    }
    errors++;
  }
  validate65.errors = vErrors;
  return errors === 0;
}
validate65.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var lint = validate67;
var schema110 = { "type": "object", "additionalProperties": false, "properties": { "rules": { "type": "object", "propertyNames": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "additionalProperties": { "type": "string", "enum": ["off", "hint", "information", "warning", "error"] } }, "accept": { "type": "array", "items": { "$ref": "#/$defs/acceptance" } } } };
function validate67(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate67.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "rules" || key0 === "accept")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.rules !== void 0) {
      let data0 = data.rules;
      if (data0 && typeof data0 == "object" && !Array.isArray(data0)) {
        for (const key1 in data0) {
          const _errs4 = errors;
          if (typeof key1 === "string") {
            if (!pattern7.test(key1)) {
              const err1 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"', propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err1];
              } else {
                vErrors.push(err1);
              }
              errors++;
            }
          } else {
            const err2 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
          var valid1 = _errs4 === errors;
          if (!valid1) {
            const err3 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid" };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        for (const key2 in data0) {
          let data1 = data0[key2];
          if (typeof data1 !== "string") {
            const err4 = { instancePath: instancePath + "/rules/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/rules/additionalProperties/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
          if (!(data1 === "off" || data1 === "hint" || data1 === "information" || data1 === "warning" || data1 === "error")) {
            const err5 = { instancePath: instancePath + "/rules/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/rules/additionalProperties/enum", keyword: "enum", params: { allowedValues: schema110.properties.rules.additionalProperties.enum }, message: "must be equal to one of the allowed values" };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.accept !== void 0) {
      let data2 = data.accept;
      if (Array.isArray(data2)) {
        const len0 = data2.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data3 = data2[i0];
          if (data3 && typeof data3 == "object" && !Array.isArray(data3)) {
            if (data3.rule === void 0) {
              const err7 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "rule" }, message: "must have required property 'rule'" };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (data3.at === void 0) {
              const err8 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "at" }, message: "must have required property 'at'" };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
            if (data3.because === void 0) {
              const err9 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "because" }, message: "must have required property 'because'" };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
            for (const key3 in data3) {
              if (!(key3 === "rule" || key3 === "at" || key3 === "because")) {
                const err10 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties" };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            }
            if (data3.rule !== void 0) {
              let data4 = data3.rule;
              if (typeof data4 === "string") {
                if (!pattern7.test(data4)) {
                  const err11 = { instancePath: instancePath + "/accept/" + i0 + "/rule", schemaPath: "#/$defs/acceptance/properties/rule/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"' };
                  if (vErrors === null) {
                    vErrors = [err11];
                  } else {
                    vErrors.push(err11);
                  }
                  errors++;
                }
              } else {
                const err12 = { instancePath: instancePath + "/accept/" + i0 + "/rule", schemaPath: "#/$defs/acceptance/properties/rule/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err12];
                } else {
                  vErrors.push(err12);
                }
                errors++;
              }
            }
            if (data3.at !== void 0) {
              let data5 = data3.at;
              if (typeof data5 === "string") {
                if (func2(data5) < 1) {
                  const err13 = { instancePath: instancePath + "/accept/" + i0 + "/at", schemaPath: "#/$defs/acceptance/properties/at/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
                  if (vErrors === null) {
                    vErrors = [err13];
                  } else {
                    vErrors.push(err13);
                  }
                  errors++;
                }
              } else {
                const err14 = { instancePath: instancePath + "/accept/" + i0 + "/at", schemaPath: "#/$defs/acceptance/properties/at/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err14];
                } else {
                  vErrors.push(err14);
                }
                errors++;
              }
            }
            if (data3.because !== void 0) {
              let data6 = data3.because;
              if (typeof data6 === "string") {
                if (func2(data6) < 1) {
                  const err15 = { instancePath: instancePath + "/accept/" + i0 + "/because", schemaPath: "#/$defs/acceptance/properties/because/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
                  if (vErrors === null) {
                    vErrors = [err15];
                  } else {
                    vErrors.push(err15);
                  }
                  errors++;
                }
              } else {
                const err16 = { instancePath: instancePath + "/accept/" + i0 + "/because", schemaPath: "#/$defs/acceptance/properties/because/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err16];
                } else {
                  vErrors.push(err16);
                }
                errors++;
              }
            }
          } else {
            const err17 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/type", keyword: "type", params: { type: "object" }, message: "must be object" };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
      } else {
        const err18 = { instancePath: instancePath + "/accept", schemaPath: "#/properties/accept/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
  } else {
    const err19 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err19];
    } else {
      vErrors.push(err19);
    }
    errors++;
  }
  validate67.errors = vErrors;
  return errors === 0;
}
validate67.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
export {
  cables,
  devices,
  lint,
  policies,
  recordings,
  site,
  streams,
  vlans,
  volumes
};
