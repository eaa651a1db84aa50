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
var site = validate71;
var schema32 = { "type": "object", "additionalProperties": false, "properties": { "name": { "type": "string", "minLength": 1 }, "timezone": { "type": "string", "pattern": "^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$" }, "description": { "type": "string" }, "channel-plan": { "type": "string", "enum": ["region-1", "australia", "north-america", "japan", "brazil"] } } };
var func2 = require_ucs2length().default;
var pattern4 = new RegExp("^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$", "u");
function validate71(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate71.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "name" || key0 === "timezone" || key0 === "description" || key0 === "channel-plan")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
          const err1 = { instancePath: instancePath + "/name", schemaPath: "#/properties/name/minLength", keyword: "minLength", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/name", schemaPath: "#/properties/name/type", keyword: "type", params: { type: "string" } };
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
          const err3 = { instancePath: instancePath + "/timezone", schemaPath: "#/properties/timezone/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_+-]+(/[A-Za-z0-9_+-]+)*$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/timezone", schemaPath: "#/properties/timezone/type", keyword: "type", params: { type: "string" } };
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
        const err5 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data["channel-plan"] !== void 0) {
      let data3 = data["channel-plan"];
      if (typeof data3 !== "string") {
        const err6 = { instancePath: instancePath + "/channel-plan", schemaPath: "#/properties/channel-plan/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (!(data3 === "region-1" || data3 === "australia" || data3 === "north-america" || data3 === "japan" || data3 === "brazil")) {
        const err7 = { instancePath: instancePath + "/channel-plan", schemaPath: "#/properties/channel-plan/enum", keyword: "enum", params: { allowedValues: schema32.properties["channel-plan"].enum } };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
  } else {
    const err8 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  validate71.errors = vErrors;
  return errors === 0;
}
validate71.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var vlans = validate72;
var schema34 = { "type": "object", "additionalProperties": false, "properties": { "id": { "type": "integer", "minimum": 1, "maximum": 4094 }, "subnet": { "$ref": "#/$defs/subnet" }, "gateway": { "$ref": "#/$defs/device-name" }, "reaches": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/vlan-name", "type": "string" } }, "internet": { "type": "boolean" }, "dhcp-pool": { "type": "string", "pattern": "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]) ?- ?((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$" }, "querier": { "$ref": "#/$defs/device-name" }, "clock": { "$ref": "#/$defs/device-name" }, "description": { "type": "string" } } };
var func1 = Object.prototype.hasOwnProperty;
var pattern6 = new RegExp("^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9])$", "u");
var pattern7 = new RegExp("^[A-Za-z0-9_-]+$", "u");
var pattern9 = new RegExp("^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]) ?- ?((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$", "u");
function validate72(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate72.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!func1.call(schema34.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        const err1 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 4094 || isNaN(data0)) {
          const err2 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4094 } };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
        if (data0 < 1 || isNaN(data0)) {
          const err3 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
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
          const err4 = { instancePath: instancePath + "/subnet", schemaPath: "#/$defs/subnet/pattern", keyword: "pattern", params: { pattern: "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9])$" } };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/subnet", schemaPath: "#/$defs/subnet/type", keyword: "type", params: { type: "string" } };
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
          const err6 = { instancePath: instancePath + "/gateway", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/gateway", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.reaches !== void 0) {
      let data3 = data.reaches;
      if (Array.isArray(data3)) {
        const len0 = data3.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data4 = data3[i0];
          if (typeof data4 !== "string") {
            const err8 = { instancePath: instancePath + "/reaches/" + i0, schemaPath: "#/properties/reaches/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
          if (typeof data4 === "string") {
            if (!pattern7.test(data4)) {
              const err9 = { instancePath: instancePath + "/reaches/" + i0, schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
          } else {
            const err10 = { instancePath: instancePath + "/reaches/" + i0, schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        let i1 = data3.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data3[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err11 = { instancePath: instancePath + "/reaches", schemaPath: "#/properties/reaches/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/reaches", schemaPath: "#/properties/reaches/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.internet !== void 0) {
      if (typeof data.internet !== "boolean") {
        const err13 = { instancePath: instancePath + "/internet", schemaPath: "#/properties/internet/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data["dhcp-pool"] !== void 0) {
      let data6 = data["dhcp-pool"];
      if (typeof data6 === "string") {
        if (!pattern9.test(data6)) {
          const err14 = { instancePath: instancePath + "/dhcp-pool", schemaPath: "#/properties/dhcp-pool/pattern", keyword: "pattern", params: { pattern: "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]) ?- ?((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$" } };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
      } else {
        const err15 = { instancePath: instancePath + "/dhcp-pool", schemaPath: "#/properties/dhcp-pool/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data.querier !== void 0) {
      let data7 = data.querier;
      if (typeof data7 === "string") {
        if (!pattern7.test(data7)) {
          const err16 = { instancePath: instancePath + "/querier", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err16];
          } else {
            vErrors.push(err16);
          }
          errors++;
        }
      } else {
        const err17 = { instancePath: instancePath + "/querier", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.clock !== void 0) {
      let data8 = data.clock;
      if (typeof data8 === "string") {
        if (!pattern7.test(data8)) {
          const err18 = { instancePath: instancePath + "/clock", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err18];
          } else {
            vErrors.push(err18);
          }
          errors++;
        }
      } else {
        const err19 = { instancePath: instancePath + "/clock", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err20 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
    }
  } else {
    const err21 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err21];
    } else {
      vErrors.push(err21);
    }
    errors++;
  }
  validate72.errors = vErrors;
  return errors === 0;
}
validate72.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var devices = validate73;
var schema41 = { "type": "object", "additionalProperties": false, "required": ["kind"], "allOf": [{ "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point"] } } }, "required": ["kind"] }, "then": { "properties": { "igmp-snooping": false, "unregistered-multicast": false, "without-querier": false, "group-table": false, "spanning-tree": false, "spanning-tree-priority": false, "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "router-port": false, "forward-reports": false } } } } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "media-converter", "server"] } } }, "required": ["kind"] }, "then": { "properties": { "poe-budget": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router"] } } }, "required": ["kind"] }, "then": { "properties": { "routing": false, "multicast-routing": false, "addresses": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner"] } } }, "required": ["kind"] }, "then": { "properties": { "address": false, "mac": false, "reserved": false, "interface": false, "poe": false, "routes": false, "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "vlan": false, "trunk": false, "native": false, "address": false, "addresses": false, "poe": false, "mac": false, "reserved": false, "interface": false } } } } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "server", "computer"] } } }, "required": ["kind"] }, "then": { "properties": { "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "lag": false, "lacp": false } } } } } }, { "if": { "properties": { "kind": { "not": { "enum": ["access-point"] } } }, "required": ["kind"] }, "then": { "properties": { "basic-rate": false, "multicast-to-unicast": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["server", "camera", "computer", "tuner"] } } }, "required": ["kind"] }, "then": { "properties": { "sessions": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["display", "computer"] } } }, "required": ["kind"] }, "then": { "properties": { "decoders": false, "decodes": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["aerial", "amplifier", "attenuator", "equaliser", "splitter", "tap", "combiner", "diplexer", "multiswitch", "outlet", "power-inserter", "isolator", "earth-block"] } } }, "required": ["kind"] }, "then": { "properties": { "frequencies": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["filter"] } } }, "required": ["kind"] }, "then": { "properties": { "passes": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["aerial", "lnb"] } } }, "required": ["kind"] }, "then": { "properties": { "receives": false, "quality": false, "mast": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["aerial"] } } }, "required": ["kind"] }, "then": { "properties": { "field": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["aerial", "amplifier"] } } }, "required": ["kind"] }, "then": { "properties": { "gain": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["lnb", "amplifier"] } } }, "required": ["kind"] }, "then": { "properties": { "noise-figure": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["amplifier"] } } }, "required": ["kind"] }, "then": { "properties": { "max-output": false, "powered-by": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["amplifier", "power-inserter"] } } }, "required": ["kind"] }, "then": { "properties": { "supply": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["lnb", "amplifier", "multiswitch", "power-inserter"] } } }, "required": ["kind"] }, "then": { "properties": { "current": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["attenuator", "filter", "equaliser", "splitter", "tap", "combiner", "diplexer", "multiswitch", "outlet", "power-inserter", "isolator", "earth-block"] } } }, "required": ["kind"] }, "then": { "properties": { "loss": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["amplifier", "attenuator", "filter", "equaliser", "splitter", "tap", "combiner", "diplexer", "multiswitch", "outlet", "power-inserter", "isolator", "earth-block"] } } }, "required": ["kind"] }, "then": { "properties": { "power-pass": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["tap"] } } }, "required": ["kind"] }, "then": { "properties": { "tap-loss": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["equaliser"] } } }, "required": ["kind"] }, "then": { "properties": { "slope": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["splitter", "tap", "multiswitch"] } } }, "required": ["kind"] }, "then": { "properties": { "ways": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["lnb", "splitter", "tap", "combiner", "diplexer", "multiswitch", "outlet"] } } }, "required": ["kind"] }, "then": { "properties": { "terminated": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["splitter", "tap", "combiner", "diplexer", "multiswitch", "outlet"] } } }, "required": ["kind"] }, "then": { "properties": { "isolation": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["lnb"] } } }, "required": ["kind"] }, "then": { "properties": { "type": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["display", "tuner", "combiner"] } } }, "required": ["kind"] }, "then": { "properties": { "inputs": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["tuner"] } } }, "required": ["kind"] }, "then": { "properties": { "tuners": false, "host": false, "bus": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["router", "server", "computer"] } } }, "required": ["kind"] }, "then": { "properties": { "buses": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["internet"] } } }, "required": ["kind"] }, "then": { "properties": { "down": false, "up": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "media-converter", "server", "display", "computer", "tuner", "patch-panel", "amplifier", "attenuator", "filter", "equaliser", "splitter", "tap", "combiner", "diplexer", "multiswitch", "power-inserter", "isolator", "earth-block", "ups"] } } }, "required": ["kind"] }, "then": { "properties": { "rack": false, "unit": false, "units": false, "side": false, "width": false, "depth": false, "weight": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["patch-panel"] } } }, "required": ["kind"] }, "then": { "properties": { "rows": false, "order": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "internet"] } } }, "required": ["kind"] }, "then": { "properties": { "speed": false, "medium": false, "module": false, "ports": { "type": "object", "additionalProperties": { "type": "object", "properties": { "speed": false, "medium": false, "module": false } } } } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel", "internet"] } } }, "required": ["kind"] }, "then": { "properties": { "ports": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["ups"] } } }, "required": ["kind"] }, "then": { "properties": { "rated": false, "rated-power": false, "battery": false, "chemistry": false, "efficiency": false, "health": false, "depth-of-discharge": false } } }, { "if": { "properties": { "kind": { "not": { "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "internet", "amplifier", "multiswitch", "power-inserter", "ups", "circuit"] } } }, "required": ["kind"] }, "then": { "properties": { "power": false } } }], "properties": { "kind": { "$ref": "#/$defs/kind" }, "igmp-snooping": { "type": "boolean" }, "unregistered-multicast": { "type": "string", "enum": ["flood", "drop"] }, "without-querier": { "type": "string", "enum": ["by-reports", "flood"] }, "group-table": { "type": "integer", "minimum": 1 }, "spanning-tree": { "type": "boolean" }, "spanning-tree-priority": { "type": "integer", "minimum": 0, "maximum": 61440, "multipleOf": 4096 }, "poe-budget": { "$ref": "#/$defs/power" }, "routing": { "type": "boolean" }, "multicast-routing": { "type": "boolean" }, "ports": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/name" }, "additionalProperties": { "$ref": "#/$defs/port" } }, "address": { "$ref": "#/$defs/own-address" }, "addresses": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/vlan-name" }, "additionalProperties": { "$ref": "#/$defs/own-address" } }, "mac": { "$ref": "#/$defs/mac" }, "reserved": { "type": "boolean" }, "interface": { "type": "string", "pattern": "^[^\\s/:]{1,15}$" }, "speed": { "$ref": "#/$defs/bit-rate" }, "medium": { "type": "string", "enum": ["copper", "multimode", "single-mode", "direct-attach"] }, "module": { "type": "string", "enum": ["100base-fx", "100base-lx10", "100base-bx10-d", "100base-bx10-u", "1000base-t", "1000base-sx", "1000base-lx", "1000base-lx10", "1000base-bx10-d", "1000base-bx10-u", "2.5gbase-t", "10gbase-t", "10gbase-sr", "10gbase-lrm", "10gbase-lr", "10gbase-er", "10gbase-br10-d", "10gbase-br10-u", "25gbase-sr", "25gbase-lr", "40gbase-sr4", "40gbase-lr4"] }, "poe": { "$ref": "#/$defs/poe" }, "down": { "$ref": "#/$defs/bit-rate" }, "up": { "$ref": "#/$defs/bit-rate" }, "basic-rate": { "$ref": "#/$defs/bit-rate", "enum": ["1 Mb/s", "2 Mb/s", "5.5 Mb/s", "6 Mb/s", "9 Mb/s", "11 Mb/s", "12 Mb/s", "18 Mb/s", "24 Mb/s", "36 Mb/s", "48 Mb/s", "54 Mb/s"] }, "multicast-to-unicast": { "type": "boolean" }, "sessions": { "type": "integer", "minimum": 1 }, "decoders": { "type": "integer", "minimum": 1 }, "decodes": { "$ref": "#/$defs/decodes" }, "routes": { "type": "array", "items": { "$ref": "#/$defs/route" } }, "description": { "type": "string" }, "model": { "type": "string" }, "location": { "type": "string" }, "frequencies": { "$ref": "#/$defs/frequency-range" }, "passes": { "$ref": "#/$defs/frequency-range" }, "receives": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/multiplex-name" }, "additionalProperties": { "$ref": "#/$defs/level" } }, "field": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/multiplex-name" }, "additionalProperties": { "$ref": "#/$defs/level" } }, "quality": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/multiplex-name" }, "additionalProperties": { "$ref": "#/$defs/ratio" } }, "gain": { "$ref": "#/$defs/ratio" }, "noise-figure": { "$ref": "#/$defs/ratio" }, "max-output": { "$ref": "#/$defs/level" }, "powered-by": { "type": "string", "enum": ["in", "out"] }, "supply": { "$ref": "#/$defs/voltage" }, "current": { "$ref": "#/$defs/current" }, "loss": { "$ref": "#/$defs/by-frequency" }, "tap-loss": { "$ref": "#/$defs/by-frequency" }, "slope": { "$ref": "#/$defs/ratio" }, "ways": { "type": "integer", "minimum": 1, "maximum": 64 }, "terminated": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/connector-name", "type": "string" } }, "isolation": { "$ref": "#/$defs/ratio" }, "power-pass": { "type": ["array", "boolean"], "uniqueItems": true, "items": { "$ref": "#/$defs/connector-name", "type": "string" } }, "mast": { "type": "object", "additionalProperties": false, "properties": { "outside-protected-zone": { "type": "boolean" }, "earthed": { "$ref": "#/$defs/cross-section" } } }, "type": { "type": "string", "enum": ["single", "twin", "quad", "quattro"] }, "inputs": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/name" }, "additionalProperties": { "$ref": "#/$defs/coax-input" } }, "tuners": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/name" }, "additionalProperties": { "$ref": "#/$defs/tuner-unit" } }, "host": { "$ref": "#/$defs/device-name" }, "bus": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "buses": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/name" }, "additionalProperties": { "type": "object", "additionalProperties": false, "required": ["kind"], "properties": { "kind": { "type": "string", "enum": ["usb-2", "usb-3"] }, "usable": { "$ref": "#/$defs/bit-rate" } } } }, "building": { "type": "string", "minLength": 1 }, "power": { "$ref": "#/$defs/own-power" }, "rated": { "$ref": "#/$defs/apparent-power" }, "rated-power": { "$ref": "#/$defs/power" }, "battery": { "$ref": "#/$defs/energy" }, "chemistry": { "type": "string", "enum": ["lead-acid", "lithium"] }, "efficiency": { "$ref": "#/$defs/percentage" }, "depth-of-discharge": { "$ref": "#/$defs/percentage" }, "health": { "$ref": "#/$defs/percentage" }, "rack": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "unit": { "type": "integer", "minimum": 1, "maximum": 100 }, "units": { "type": "integer", "minimum": 1, "maximum": 100 }, "side": { "type": "string", "enum": ["front", "rear"] }, "width": { "$ref": "#/$defs/length" }, "depth": { "$ref": "#/$defs/length" }, "weight": { "$ref": "#/$defs/mass" }, "rows": { "type": "integer", "minimum": 1, "maximum": 8 }, "order": { "type": "string", "enum": ["by-row", "by-column"] } } };
var schema42 = { "type": "string", "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel", "internet", "aerial", "lnb", "amplifier", "attenuator", "filter", "equaliser", "splitter", "tap", "combiner", "diplexer", "multiswitch", "outlet", "power-inserter", "isolator", "earth-block", "ups", "circuit"] };
var pattern13 = new RegExp("^[0-9]+(\\.[0-9]+)? W$", "u");
var pattern5 = new RegExp("^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$", "u");
var pattern19 = new RegExp("^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$", "u");
var pattern23 = new RegExp("^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$", "u");
var pattern24 = new RegExp("^[^\\s/:]{1,15}$", "u");
var pattern15 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "u");
var pattern40 = new RegExp("^[0-9]+(\\.[0-9]+)?-[0-9]+(\\.[0-9]+)? (MHz|GHz)$", "u");
var pattern43 = new RegExp("^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$", "u");
var pattern47 = new RegExp("^-?[0-9]+(\\.[0-9]+)? dB$", "u");
var pattern51 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? V$", "u");
var pattern52 = new RegExp("^[0-9]+(\\.[0-9]+)? (mA|A)$", "u");
var pattern60 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? mm\xB2$", "u");
var pattern77 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? VA$", "u");
var pattern79 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? Wh$", "u");
var pattern76 = new RegExp("^[0-9]+(\\.[0-9]+)? %$", "u");
var pattern84 = new RegExp("^[0-9]+(\\.[0-9]+)? (m|mm)$", "u");
var pattern86 = new RegExp("^[0-9]+(\\.[0-9]+)? (kg|g)$", "u");
var schema45 = { "type": "object", "additionalProperties": false, "properties": { "speed": { "$ref": "#/$defs/bit-rate" }, "medium": { "type": "string", "enum": ["copper", "multimode", "single-mode", "direct-attach"] }, "module": { "type": "string", "enum": ["100base-fx", "100base-lx10", "100base-bx10-d", "100base-bx10-u", "1000base-t", "1000base-sx", "1000base-lx", "1000base-lx10", "1000base-bx10-d", "1000base-bx10-u", "2.5gbase-t", "10gbase-t", "10gbase-sr", "10gbase-lrm", "10gbase-lr", "10gbase-er", "10gbase-br10-d", "10gbase-br10-u", "25gbase-sr", "25gbase-lr", "40gbase-sr4", "40gbase-lr4"] }, "vlan": { "$ref": "#/$defs/vlan-name" }, "trunk": { "type": "array", "minItems": 1, "uniqueItems": true, "items": { "$ref": "#/$defs/vlan-name", "type": "string" } }, "native": { "$ref": "#/$defs/vlan-name" }, "address": { "$ref": "#/$defs/own-address" }, "addresses": { "type": "object", "minProperties": 1, "propertyNames": { "$ref": "#/$defs/vlan-name" }, "additionalProperties": { "$ref": "#/$defs/own-address" } }, "poe": { "$ref": "#/$defs/poe" }, "mac": { "$ref": "#/$defs/mac" }, "reserved": { "type": "boolean" }, "interface": { "type": "string", "pattern": "^[^\\s/:]{1,15}$" }, "lag": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "lacp": { "type": "string", "enum": ["active", "passive", "off"] }, "router-port": { "type": "boolean" }, "forward-reports": { "type": "boolean" }, "description": { "type": "string" } } };
var schema53 = { "type": ["string", "object"], "if": { "type": "string" }, "then": { "type": "string", "enum": ["af", "at", "bt", "bt-type-4"] }, "additionalProperties": false, "properties": { "class": { "type": "integer", "minimum": 0, "maximum": 8 }, "power": { "$ref": "#/$defs/power" } } };
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
    const err0 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: schema53.type } };
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
      const err2 = { instancePath, schemaPath: "#/then/type", keyword: "type", params: { type: "string" } };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (!(data === "af" || data === "at" || data === "bt" || data === "bt-type-4")) {
      const err3 = { instancePath, schemaPath: "#/then/enum", keyword: "enum", params: { allowedValues: schema53.then.enum } };
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
    const err4 = { instancePath, schemaPath: "#/if", keyword: "if", params: { failingKeyword: "then" } };
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
        const err5 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        const err6 = { instancePath: instancePath + "/class", schemaPath: "#/properties/class/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 8 || isNaN(data0)) {
          const err7 = { instancePath: instancePath + "/class", schemaPath: "#/properties/class/maximum", keyword: "maximum", params: { comparison: "<=", limit: 8 } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (data0 < 0 || isNaN(data0)) {
          const err8 = { instancePath: instancePath + "/class", schemaPath: "#/properties/class/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 } };
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
        if (!pattern13.test(data1)) {
          const err9 = { instancePath: instancePath + "/power", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/power", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" } };
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
      if (!func1.call(schema45.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        if (!pattern15.test(data0)) {
          const err1 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.medium !== void 0) {
      let data1 = data.medium;
      if (typeof data1 !== "string") {
        const err3 = { instancePath: instancePath + "/medium", schemaPath: "#/properties/medium/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
      if (!(data1 === "copper" || data1 === "multimode" || data1 === "single-mode" || data1 === "direct-attach")) {
        const err4 = { instancePath: instancePath + "/medium", schemaPath: "#/properties/medium/enum", keyword: "enum", params: { allowedValues: schema45.properties.medium.enum } };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.module !== void 0) {
      let data2 = data.module;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/module", schemaPath: "#/properties/module/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (!(data2 === "100base-fx" || data2 === "100base-lx10" || data2 === "100base-bx10-d" || data2 === "100base-bx10-u" || data2 === "1000base-t" || data2 === "1000base-sx" || data2 === "1000base-lx" || data2 === "1000base-lx10" || data2 === "1000base-bx10-d" || data2 === "1000base-bx10-u" || data2 === "2.5gbase-t" || data2 === "10gbase-t" || data2 === "10gbase-sr" || data2 === "10gbase-lrm" || data2 === "10gbase-lr" || data2 === "10gbase-er" || data2 === "10gbase-br10-d" || data2 === "10gbase-br10-u" || data2 === "25gbase-sr" || data2 === "25gbase-lr" || data2 === "40gbase-sr4" || data2 === "40gbase-lr4")) {
        const err6 = { instancePath: instancePath + "/module", schemaPath: "#/properties/module/enum", keyword: "enum", params: { allowedValues: schema45.properties.module.enum } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.vlan !== void 0) {
      let data3 = data.vlan;
      if (typeof data3 === "string") {
        if (!pattern7.test(data3)) {
          const err7 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.trunk !== void 0) {
      let data4 = data.trunk;
      if (Array.isArray(data4)) {
        if (data4.length < 1) {
          const err9 = { instancePath: instancePath + "/trunk", schemaPath: "#/properties/trunk/minItems", keyword: "minItems", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        const len0 = data4.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data5 = data4[i0];
          if (typeof data5 !== "string") {
            const err10 = { instancePath: instancePath + "/trunk/" + i0, schemaPath: "#/properties/trunk/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
          if (typeof data5 === "string") {
            if (!pattern7.test(data5)) {
              const err11 = { instancePath: instancePath + "/trunk/" + i0, schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
          } else {
            const err12 = { instancePath: instancePath + "/trunk/" + i0, schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
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
              const err13 = { instancePath: instancePath + "/trunk", schemaPath: "#/properties/trunk/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err14 = { instancePath: instancePath + "/trunk", schemaPath: "#/properties/trunk/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.native !== void 0) {
      let data6 = data.native;
      if (typeof data6 === "string") {
        if (!pattern7.test(data6)) {
          const err15 = { instancePath: instancePath + "/native", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      } else {
        const err16 = { instancePath: instancePath + "/native", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.address !== void 0) {
      let data7 = data.address;
      if (typeof data7 === "string") {
        if (!pattern19.test(data7)) {
          const err17 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" } };
          if (vErrors === null) {
            vErrors = [err17];
          } else {
            vErrors.push(err17);
          }
          errors++;
        }
      } else {
        const err18 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.addresses !== void 0) {
      let data8 = data.addresses;
      if (data8 && typeof data8 == "object" && !Array.isArray(data8)) {
        if (Object.keys(data8).length < 1) {
          const err19 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
        for (const key1 in data8) {
          const _errs26 = errors;
          if (typeof key1 === "string") {
            if (!pattern7.test(key1)) {
              const err20 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err20];
              } else {
                vErrors.push(err20);
              }
              errors++;
            }
          } else {
            const err21 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
          var valid9 = _errs26 === errors;
          if (!valid9) {
            const err22 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/propertyNames", keyword: "propertyNames", params: { propertyName: key1 } };
            if (vErrors === null) {
              vErrors = [err22];
            } else {
              vErrors.push(err22);
            }
            errors++;
          }
        }
        for (const key2 in data8) {
          let data9 = data8[key2];
          if (typeof data9 === "string") {
            if (!pattern19.test(data9)) {
              const err23 = { instancePath: instancePath + "/addresses/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" } };
              if (vErrors === null) {
                vErrors = [err23];
              } else {
                vErrors.push(err23);
              }
              errors++;
            }
          } else {
            const err24 = { instancePath: instancePath + "/addresses/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
        }
      } else {
        const err25 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err25];
        } else {
          vErrors.push(err25);
        }
        errors++;
      }
    }
    if (data.poe !== void 0) {
      if (!validate25(data.poe, { instancePath: instancePath + "/poe", parentData: data, parentDataProperty: "poe", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate25.errors;
        else for (const each of validate25.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data.mac !== void 0) {
      let data11 = data.mac;
      if (typeof data11 === "string") {
        if (!pattern23.test(data11)) {
          const err26 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/pattern", keyword: "pattern", params: { pattern: "^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$" } };
          if (vErrors === null) {
            vErrors = [err26];
          } else {
            vErrors.push(err26);
          }
          errors++;
        }
      } else {
        const err27 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
    if (data.reserved !== void 0) {
      if (typeof data.reserved !== "boolean") {
        const err28 = { instancePath: instancePath + "/reserved", schemaPath: "#/properties/reserved/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data.interface !== void 0) {
      let data13 = data.interface;
      if (typeof data13 === "string") {
        if (!pattern24.test(data13)) {
          const err29 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/pattern", keyword: "pattern", params: { pattern: "^[^\\s/:]{1,15}$" } };
          if (vErrors === null) {
            vErrors = [err29];
          } else {
            vErrors.push(err29);
          }
          errors++;
        }
      } else {
        const err30 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
    }
    if (data.lag !== void 0) {
      let data14 = data.lag;
      if (typeof data14 === "string") {
        if (!pattern7.test(data14)) {
          const err31 = { instancePath: instancePath + "/lag", schemaPath: "#/properties/lag/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err31];
          } else {
            vErrors.push(err31);
          }
          errors++;
        }
      } else {
        const err32 = { instancePath: instancePath + "/lag", schemaPath: "#/properties/lag/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err32];
        } else {
          vErrors.push(err32);
        }
        errors++;
      }
    }
    if (data.lacp !== void 0) {
      let data15 = data.lacp;
      if (typeof data15 !== "string") {
        const err33 = { instancePath: instancePath + "/lacp", schemaPath: "#/properties/lacp/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err33];
        } else {
          vErrors.push(err33);
        }
        errors++;
      }
      if (!(data15 === "active" || data15 === "passive" || data15 === "off")) {
        const err34 = { instancePath: instancePath + "/lacp", schemaPath: "#/properties/lacp/enum", keyword: "enum", params: { allowedValues: schema45.properties.lacp.enum } };
        if (vErrors === null) {
          vErrors = [err34];
        } else {
          vErrors.push(err34);
        }
        errors++;
      }
    }
    if (data["router-port"] !== void 0) {
      if (typeof data["router-port"] !== "boolean") {
        const err35 = { instancePath: instancePath + "/router-port", schemaPath: "#/properties/router-port/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err35];
        } else {
          vErrors.push(err35);
        }
        errors++;
      }
    }
    if (data["forward-reports"] !== void 0) {
      if (typeof data["forward-reports"] !== "boolean") {
        const err36 = { instancePath: instancePath + "/forward-reports", schemaPath: "#/properties/forward-reports/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err36];
        } else {
          vErrors.push(err36);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err37 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err37];
        } else {
          vErrors.push(err37);
        }
        errors++;
      }
    }
  } else {
    const err38 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err38];
    } else {
      vErrors.push(err38);
    }
    errors++;
  }
  validate24.errors = vErrors;
  return errors === 0;
}
validate24.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var schema65 = { "type": "string", "enum": ["h264", "h265", "mpeg2", "mjpeg", "av1", "vp9"] };
var schema66 = { "type": "string", "enum": ["pcma", "pcmu", "g722", "aac", "opus", "mp2", "ac3", "l16"] };
var pattern35 = new RegExp("^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$", "u");
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
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
          const err1 = { instancePath: instancePath + "/video", schemaPath: "#/properties/video/minItems", keyword: "minItems", params: { limit: 1 } };
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
            const err2 = { instancePath: instancePath + "/video/" + i0, schemaPath: "#/properties/video/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
          if (typeof data1 !== "string") {
            const err3 = { instancePath: instancePath + "/video/" + i0, schemaPath: "#/$defs/video-codec/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (!(data1 === "h264" || data1 === "h265" || data1 === "mpeg2" || data1 === "mjpeg" || data1 === "av1" || data1 === "vp9")) {
            const err4 = { instancePath: instancePath + "/video/" + i0, schemaPath: "#/$defs/video-codec/enum", keyword: "enum", params: { allowedValues: schema65.enum } };
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
              const err5 = { instancePath: instancePath + "/video", schemaPath: "#/properties/video/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
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
        const err6 = { instancePath: instancePath + "/video", schemaPath: "#/properties/video/type", keyword: "type", params: { type: "array" } };
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
          const err7 = { instancePath: instancePath + "/audio", schemaPath: "#/properties/audio/minItems", keyword: "minItems", params: { limit: 1 } };
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
            const err8 = { instancePath: instancePath + "/audio/" + i2, schemaPath: "#/properties/audio/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
          if (typeof data3 !== "string") {
            const err9 = { instancePath: instancePath + "/audio/" + i2, schemaPath: "#/$defs/audio-codec/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
          if (!(data3 === "pcma" || data3 === "pcmu" || data3 === "g722" || data3 === "aac" || data3 === "opus" || data3 === "mp2" || data3 === "ac3" || data3 === "l16")) {
            const err10 = { instancePath: instancePath + "/audio/" + i2, schemaPath: "#/$defs/audio-codec/enum", keyword: "enum", params: { allowedValues: schema66.enum } };
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
              const err11 = { instancePath: instancePath + "/audio", schemaPath: "#/properties/audio/uniqueItems", keyword: "uniqueItems", params: { i: i3, j: j1 } };
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
        const err12 = { instancePath: instancePath + "/audio", schemaPath: "#/properties/audio/type", keyword: "type", params: { type: "array" } };
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
        if (!pattern35.test(data4)) {
          const err13 = { instancePath: instancePath + "/picture", schemaPath: "#/properties/picture/pattern", keyword: "pattern", params: { pattern: "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$" } };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/picture", schemaPath: "#/properties/picture/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
  } else {
    const err15 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
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
var schema68 = { "type": ["string", "integer"], "pattern": "^[A-Za-z0-9_-]+$" };
var pattern36 = new RegExp("^(default|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9]))$", "u");
var pattern39 = new RegExp("^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$", "u");
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
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.port === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "port" } };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "to" || key0 === "port" || key0 === "vlan" || key0 === "via")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        if (!pattern36.test(data0)) {
          const err3 = { instancePath: instancePath + "/to", schemaPath: "#/properties/to/pattern", keyword: "pattern", params: { pattern: "^(default|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])/(3[0-2]|[12]?[0-9]))$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/to", schemaPath: "#/properties/to/type", keyword: "type", params: { type: "string" } };
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
        const err5 = { instancePath: instancePath + "/port", schemaPath: "#/$defs/own-port/type", keyword: "type", params: { type: schema68.type } };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (typeof data1 === "string") {
        if (!pattern7.test(data1)) {
          const err6 = { instancePath: instancePath + "/port", schemaPath: "#/$defs/own-port/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
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
          const err7 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/vlan", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern39.test(data3)) {
          const err9 = { instancePath: instancePath + "/via", schemaPath: "#/$defs/address/pattern", keyword: "pattern", params: { pattern: "^((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/via", schemaPath: "#/$defs/address/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
  } else {
    const err11 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
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
var schema84 = { "type": ["object", "string"], "propertyNames": { "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (MHz|GHz)$" }, "minProperties": 1, "additionalProperties": { "$ref": "#/$defs/ratio" }, "then": { "$ref": "#/$defs/ratio" }, "if": { "type": "string" } };
var pattern54 = new RegExp("^[0-9]+(\\.[0-9]+)? (MHz|GHz)$", "u");
function validate33(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate33.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (!(data && typeof data == "object" && !Array.isArray(data)) && typeof data !== "string") {
    const err0 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: schema84.type } };
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
    if (typeof data === "string") {
      if (!pattern47.test(data)) {
        const err2 = { instancePath, schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    } else {
      const err3 = { instancePath, schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
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
    const err4 = { instancePath, schemaPath: "#/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err5 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 } };
      if (vErrors === null) {
        vErrors = [err5];
      } else {
        vErrors.push(err5);
      }
      errors++;
    }
    for (const key0 in data) {
      const _errs7 = errors;
      if (typeof key0 === "string") {
        if (!pattern54.test(key0)) {
          const err6 = { instancePath, schemaPath: "#/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (MHz|GHz)$" }, propertyName: key0 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath, schemaPath: "#/propertyNames/type", keyword: "type", params: { type: "string" }, propertyName: key0 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
      var valid2 = _errs7 === errors;
      if (!valid2) {
        const err8 = { instancePath, schemaPath: "#/propertyNames", keyword: "propertyNames", params: { propertyName: key0 } };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    for (const key1 in data) {
      let data0 = data[key1];
      if (typeof data0 === "string") {
        if (!pattern47.test(data0)) {
          const err9 = { instancePath: instancePath + "/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
  }
  validate33.errors = vErrors;
  return errors === 0;
}
validate33.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var schema93 = { "type": ["object", "string"], "additionalProperties": false, "properties": { "systems": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/system", "type": "string" } }, "noise-figure": { "$ref": "#/$defs/ratio" }, "max-input": { "$ref": "#/$defs/level" }, "supplies": { "$ref": "#/$defs/current" }, "supply": { "$ref": "#/$defs/voltage" } }, "if": { "type": "string" }, "then": { "$ref": "#/$defs/frequency-range" } };
var schema95 = { "type": "string", "enum": ["dvb-t", "dvb-t2", "dvb-c", "j83b", "dvb-s", "dvb-s2", "atsc", "isdb-t"] };
function validate36(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate36.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (!(data && typeof data == "object" && !Array.isArray(data)) && typeof data !== "string") {
    const err0 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: schema93.type } };
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
    if (typeof data === "string") {
      if (!pattern40.test(data)) {
        const err2 = { instancePath, schemaPath: "#/$defs/frequency-range/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)?-[0-9]+(\\.[0-9]+)? (MHz|GHz)$" } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    } else {
      const err3 = { instancePath, schemaPath: "#/$defs/frequency-range/type", keyword: "type", params: { type: "string" } };
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
    const err4 = { instancePath, schemaPath: "#/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "systems" || key0 === "noise-figure" || key0 === "max-input" || key0 === "supplies" || key0 === "supply")) {
        const err5 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.systems !== void 0) {
      let data0 = data.systems;
      if (Array.isArray(data0)) {
        const len0 = data0.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data1 = data0[i0];
          if (typeof data1 !== "string") {
            const err6 = { instancePath: instancePath + "/systems/" + i0, schemaPath: "#/properties/systems/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
          if (typeof data1 !== "string") {
            const err7 = { instancePath: instancePath + "/systems/" + i0, schemaPath: "#/$defs/system/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
          if (!(data1 === "dvb-t" || data1 === "dvb-t2" || data1 === "dvb-c" || data1 === "j83b" || data1 === "dvb-s" || data1 === "dvb-s2" || data1 === "atsc" || data1 === "isdb-t")) {
            const err8 = { instancePath: instancePath + "/systems/" + i0, schemaPath: "#/$defs/system/enum", keyword: "enum", params: { allowedValues: schema95.enum } };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
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
              const err9 = { instancePath: instancePath + "/systems", schemaPath: "#/properties/systems/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
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
        const err10 = { instancePath: instancePath + "/systems", schemaPath: "#/properties/systems/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data["noise-figure"] !== void 0) {
      let data2 = data["noise-figure"];
      if (typeof data2 === "string") {
        if (!pattern47.test(data2)) {
          const err11 = { instancePath: instancePath + "/noise-figure", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/noise-figure", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data["max-input"] !== void 0) {
      let data3 = data["max-input"];
      if (typeof data3 === "string") {
        if (!pattern43.test(data3)) {
          const err13 = { instancePath: instancePath + "/max-input", schemaPath: "#/$defs/level/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$" } };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/max-input", schemaPath: "#/$defs/level/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.supplies !== void 0) {
      let data4 = data.supplies;
      if (typeof data4 === "string") {
        if (!pattern52.test(data4)) {
          const err15 = { instancePath: instancePath + "/supplies", schemaPath: "#/$defs/current/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (mA|A)$" } };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      } else {
        const err16 = { instancePath: instancePath + "/supplies", schemaPath: "#/$defs/current/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.supply !== void 0) {
      let data5 = data.supply;
      if (typeof data5 === "string") {
        if (!pattern51.test(data5)) {
          const err17 = { instancePath: instancePath + "/supply", schemaPath: "#/$defs/voltage/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? V$" } };
          if (vErrors === null) {
            vErrors = [err17];
          } else {
            vErrors.push(err17);
          }
          errors++;
        }
      } else {
        const err18 = { instancePath: instancePath + "/supply", schemaPath: "#/$defs/voltage/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
  }
  validate36.errors = vErrors;
  return errors === 0;
}
validate36.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate38(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate38.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "systems" || key0 === "input")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.systems !== void 0) {
      let data0 = data.systems;
      if (Array.isArray(data0)) {
        if (data0.length < 1) {
          const err1 = { instancePath: instancePath + "/systems", schemaPath: "#/properties/systems/minItems", keyword: "minItems", params: { limit: 1 } };
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
            const err2 = { instancePath: instancePath + "/systems/" + i0, schemaPath: "#/properties/systems/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
          if (typeof data1 !== "string") {
            const err3 = { instancePath: instancePath + "/systems/" + i0, schemaPath: "#/$defs/system/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (!(data1 === "dvb-t" || data1 === "dvb-t2" || data1 === "dvb-c" || data1 === "j83b" || data1 === "dvb-s" || data1 === "dvb-s2" || data1 === "atsc" || data1 === "isdb-t")) {
            const err4 = { instancePath: instancePath + "/systems/" + i0, schemaPath: "#/$defs/system/enum", keyword: "enum", params: { allowedValues: schema95.enum } };
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
              const err5 = { instancePath: instancePath + "/systems", schemaPath: "#/properties/systems/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
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
        const err6 = { instancePath: instancePath + "/systems", schemaPath: "#/properties/systems/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.input !== void 0) {
      let data2 = data.input;
      if (typeof data2 === "string") {
        if (!pattern7.test(data2)) {
          const err7 = { instancePath: instancePath + "/input", schemaPath: "#/$defs/connector-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/input", schemaPath: "#/$defs/connector-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate38.errors = vErrors;
  return errors === 0;
}
validate38.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate40(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate40.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "idle" || key0 === "at-most" || key0 === "from" || key0 === "power-factor" || key0 === "poe-efficiency")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.idle !== void 0) {
      let data0 = data.idle;
      if (typeof data0 === "string") {
        if (!pattern13.test(data0)) {
          const err1 = { instancePath: instancePath + "/idle", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" } };
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
      } else {
        const err2 = { instancePath: instancePath + "/idle", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data["at-most"] !== void 0) {
      let data1 = data["at-most"];
      if (typeof data1 === "string") {
        if (!pattern13.test(data1)) {
          const err3 = { instancePath: instancePath + "/at-most", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/at-most", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.from !== void 0) {
      let data2 = data.from;
      if (typeof data2 === "string") {
        if (!pattern7.test(data2)) {
          const err5 = { instancePath: instancePath + "/from", schemaPath: "#/properties/from/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/from", schemaPath: "#/properties/from/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["power-factor"] !== void 0) {
      let data3 = data["power-factor"];
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 > 1 || isNaN(data3)) {
          const err7 = { instancePath: instancePath + "/power-factor", schemaPath: "#/properties/power-factor/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (data3 <= 0 || isNaN(data3)) {
          const err8 = { instancePath: instancePath + "/power-factor", schemaPath: "#/properties/power-factor/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 } };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/power-factor", schemaPath: "#/properties/power-factor/type", keyword: "type", params: { type: "number" } };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data["poe-efficiency"] !== void 0) {
      let data4 = data["poe-efficiency"];
      if (typeof data4 === "string") {
        if (!pattern76.test(data4)) {
          const err10 = { instancePath: instancePath + "/poe-efficiency", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/poe-efficiency", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate40.errors = vErrors;
  return errors === 0;
}
validate40.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate73(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate73.evaluated;
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
        const _errs5 = errors;
        const _errs6 = errors;
        if (!(data0 === "switch" || data0 === "router" || data0 === "access-point")) {
          const err1 = {};
          if (vErrors === null) {
            vErrors = [err1];
          } else {
            vErrors.push(err1);
          }
          errors++;
        }
        var valid3 = _errs6 === errors;
        if (valid3) {
          const err2 = {};
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        } else {
          errors = _errs5;
          if (vErrors !== null) {
            if (_errs5) {
              vErrors.length = _errs5;
            } else {
              vErrors = null;
            }
          }
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
    const _errs7 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["igmp-snooping"] !== void 0) {
        const err3 = { instancePath: instancePath + "/igmp-snooping", schemaPath: "#/allOf/0/then/properties/igmp-snooping/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
      if (data["unregistered-multicast"] !== void 0) {
        const err4 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/allOf/0/then/properties/unregistered-multicast/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
      if (data["without-querier"] !== void 0) {
        const err5 = { instancePath: instancePath + "/without-querier", schemaPath: "#/allOf/0/then/properties/without-querier/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (data["group-table"] !== void 0) {
        const err6 = { instancePath: instancePath + "/group-table", schemaPath: "#/allOf/0/then/properties/group-table/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (data["spanning-tree"] !== void 0) {
        const err7 = { instancePath: instancePath + "/spanning-tree", schemaPath: "#/allOf/0/then/properties/spanning-tree/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
      if (data["spanning-tree-priority"] !== void 0) {
        const err8 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/allOf/0/then/properties/spanning-tree-priority/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
      if (data.ports !== void 0) {
        let data7 = data.ports;
        if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
          for (const key0 in data7) {
            let data8 = data7[key0];
            if (data8 && typeof data8 == "object" && !Array.isArray(data8)) {
              if (data8["router-port"] !== void 0) {
                const err9 = { instancePath: instancePath + "/ports/" + key0.replace(/~/g, "~0").replace(/\//g, "~1") + "/router-port", schemaPath: "#/allOf/0/then/properties/ports/additionalProperties/properties/router-port/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
              if (data8["forward-reports"] !== void 0) {
                const err10 = { instancePath: instancePath + "/ports/" + key0.replace(/~/g, "~0").replace(/\//g, "~1") + "/forward-reports", schemaPath: "#/allOf/0/then/properties/ports/additionalProperties/properties/forward-reports/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            } else {
              const err11 = { instancePath: instancePath + "/ports/" + key0.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/0/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" } };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
          }
        } else {
          const err12 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/0/then/properties/ports/type", keyword: "type", params: { type: "object" } };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      }
    }
    var _valid0 = _errs7 === errors;
    valid1 = _valid0;
    if (valid1) {
      var props0 = {};
      props0["igmp-snooping"] = true;
      props0["unregistered-multicast"] = true;
      props0["without-querier"] = true;
      props0["group-table"] = true;
      props0["spanning-tree"] = true;
      props0["spanning-tree-priority"] = true;
      props0.ports = true;
      props0.kind = true;
    }
  }
  if (!valid1) {
    const err13 = { instancePath, schemaPath: "#/allOf/0/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  const _errs14 = errors;
  let valid7 = true;
  const _errs15 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing1;
    if (data.kind === void 0 && (missing1 = "kind")) {
      const err14 = {};
      if (vErrors === null) {
        vErrors = [err14];
      } else {
        vErrors.push(err14);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data11 = data.kind;
        const _errs17 = errors;
        const _errs18 = errors;
        if (!(data11 === "switch" || data11 === "router" || data11 === "access-point" || data11 === "media-converter" || data11 === "server")) {
          const err15 = {};
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
        var valid9 = _errs18 === errors;
        if (valid9) {
          const err16 = {};
          if (vErrors === null) {
            vErrors = [err16];
          } else {
            vErrors.push(err16);
          }
          errors++;
        } else {
          errors = _errs17;
          if (vErrors !== null) {
            if (_errs17) {
              vErrors.length = _errs17;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid1 = _errs15 === errors;
  errors = _errs14;
  if (vErrors !== null) {
    if (_errs14) {
      vErrors.length = _errs14;
    } else {
      vErrors = null;
    }
  }
  if (_valid1) {
    const _errs19 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["poe-budget"] !== void 0) {
        const err17 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/allOf/1/then/properties/poe-budget/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    var _valid1 = _errs19 === errors;
    valid7 = _valid1;
    if (valid7) {
      var props1 = {};
      props1["poe-budget"] = true;
      props1.kind = true;
    }
  }
  if (!valid7) {
    const err18 = { instancePath, schemaPath: "#/allOf/1/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err18];
    } else {
      vErrors.push(err18);
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
  const _errs21 = errors;
  let valid11 = true;
  const _errs22 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing2;
    if (data.kind === void 0 && (missing2 = "kind")) {
      const err19 = {};
      if (vErrors === null) {
        vErrors = [err19];
      } else {
        vErrors.push(err19);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data13 = data.kind;
        const _errs24 = errors;
        const _errs25 = errors;
        if (!(data13 === "switch" || data13 === "router")) {
          const err20 = {};
          if (vErrors === null) {
            vErrors = [err20];
          } else {
            vErrors.push(err20);
          }
          errors++;
        }
        var valid13 = _errs25 === errors;
        if (valid13) {
          const err21 = {};
          if (vErrors === null) {
            vErrors = [err21];
          } else {
            vErrors.push(err21);
          }
          errors++;
        } else {
          errors = _errs24;
          if (vErrors !== null) {
            if (_errs24) {
              vErrors.length = _errs24;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid2 = _errs22 === errors;
  errors = _errs21;
  if (vErrors !== null) {
    if (_errs21) {
      vErrors.length = _errs21;
    } else {
      vErrors = null;
    }
  }
  if (_valid2) {
    const _errs26 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.routing !== void 0) {
        const err22 = { instancePath: instancePath + "/routing", schemaPath: "#/allOf/2/then/properties/routing/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
      if (data["multicast-routing"] !== void 0) {
        const err23 = { instancePath: instancePath + "/multicast-routing", schemaPath: "#/allOf/2/then/properties/multicast-routing/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
      if (data.addresses !== void 0) {
        const err24 = { instancePath: instancePath + "/addresses", schemaPath: "#/allOf/2/then/properties/addresses/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
    var _valid2 = _errs26 === errors;
    valid11 = _valid2;
    if (valid11) {
      var props2 = {};
      props2.routing = true;
      props2["multicast-routing"] = true;
      props2.addresses = true;
      props2.kind = true;
    }
  }
  if (!valid11) {
    const err25 = { instancePath, schemaPath: "#/allOf/2/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err25];
    } else {
      vErrors.push(err25);
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
  const _errs28 = errors;
  let valid15 = true;
  const _errs29 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing3;
    if (data.kind === void 0 && (missing3 = "kind")) {
      const err26 = {};
      if (vErrors === null) {
        vErrors = [err26];
      } else {
        vErrors.push(err26);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data17 = data.kind;
        const _errs31 = errors;
        const _errs32 = errors;
        if (!(data17 === "switch" || data17 === "router" || data17 === "access-point" || data17 === "media-converter" || data17 === "server" || data17 === "camera" || data17 === "display" || data17 === "computer" || data17 === "tuner")) {
          const err27 = {};
          if (vErrors === null) {
            vErrors = [err27];
          } else {
            vErrors.push(err27);
          }
          errors++;
        }
        var valid17 = _errs32 === errors;
        if (valid17) {
          const err28 = {};
          if (vErrors === null) {
            vErrors = [err28];
          } else {
            vErrors.push(err28);
          }
          errors++;
        } else {
          errors = _errs31;
          if (vErrors !== null) {
            if (_errs31) {
              vErrors.length = _errs31;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid3 = _errs29 === errors;
  errors = _errs28;
  if (vErrors !== null) {
    if (_errs28) {
      vErrors.length = _errs28;
    } else {
      vErrors = null;
    }
  }
  if (_valid3) {
    const _errs33 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.address !== void 0) {
        const err29 = { instancePath: instancePath + "/address", schemaPath: "#/allOf/3/then/properties/address/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err29];
        } else {
          vErrors.push(err29);
        }
        errors++;
      }
      if (data.mac !== void 0) {
        const err30 = { instancePath: instancePath + "/mac", schemaPath: "#/allOf/3/then/properties/mac/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
      if (data.reserved !== void 0) {
        const err31 = { instancePath: instancePath + "/reserved", schemaPath: "#/allOf/3/then/properties/reserved/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
      if (data.interface !== void 0) {
        const err32 = { instancePath: instancePath + "/interface", schemaPath: "#/allOf/3/then/properties/interface/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err32];
        } else {
          vErrors.push(err32);
        }
        errors++;
      }
      if (data.poe !== void 0) {
        const err33 = { instancePath: instancePath + "/poe", schemaPath: "#/allOf/3/then/properties/poe/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err33];
        } else {
          vErrors.push(err33);
        }
        errors++;
      }
      if (data.routes !== void 0) {
        const err34 = { instancePath: instancePath + "/routes", schemaPath: "#/allOf/3/then/properties/routes/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err34];
        } else {
          vErrors.push(err34);
        }
        errors++;
      }
      if (data.ports !== void 0) {
        let data24 = data.ports;
        if (data24 && typeof data24 == "object" && !Array.isArray(data24)) {
          for (const key1 in data24) {
            let data25 = data24[key1];
            if (data25 && typeof data25 == "object" && !Array.isArray(data25)) {
              if (data25.vlan !== void 0) {
                const err35 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/vlan", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/vlan/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err35];
                } else {
                  vErrors.push(err35);
                }
                errors++;
              }
              if (data25.trunk !== void 0) {
                const err36 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/trunk", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/trunk/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err36];
                } else {
                  vErrors.push(err36);
                }
                errors++;
              }
              if (data25.native !== void 0) {
                const err37 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/native", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/native/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err37];
                } else {
                  vErrors.push(err37);
                }
                errors++;
              }
              if (data25.address !== void 0) {
                const err38 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/address", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/address/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err38];
                } else {
                  vErrors.push(err38);
                }
                errors++;
              }
              if (data25.addresses !== void 0) {
                const err39 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/addresses/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err39];
                } else {
                  vErrors.push(err39);
                }
                errors++;
              }
              if (data25.poe !== void 0) {
                const err40 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/poe/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err40];
                } else {
                  vErrors.push(err40);
                }
                errors++;
              }
              if (data25.mac !== void 0) {
                const err41 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/mac", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/mac/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err41];
                } else {
                  vErrors.push(err41);
                }
                errors++;
              }
              if (data25.reserved !== void 0) {
                const err42 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/reserved", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/reserved/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err42];
                } else {
                  vErrors.push(err42);
                }
                errors++;
              }
              if (data25.interface !== void 0) {
                const err43 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1") + "/interface", schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/properties/interface/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err43];
                } else {
                  vErrors.push(err43);
                }
                errors++;
              }
            } else {
              const err44 = { instancePath: instancePath + "/ports/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/3/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" } };
              if (vErrors === null) {
                vErrors = [err44];
              } else {
                vErrors.push(err44);
              }
              errors++;
            }
          }
        } else {
          const err45 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/3/then/properties/ports/type", keyword: "type", params: { type: "object" } };
          if (vErrors === null) {
            vErrors = [err45];
          } else {
            vErrors.push(err45);
          }
          errors++;
        }
      }
    }
    var _valid3 = _errs33 === errors;
    valid15 = _valid3;
    if (valid15) {
      var props3 = {};
      props3.address = true;
      props3.mac = true;
      props3.reserved = true;
      props3.interface = true;
      props3.poe = true;
      props3.routes = true;
      props3.ports = true;
      props3.kind = true;
    }
  }
  if (!valid15) {
    const err46 = { instancePath, schemaPath: "#/allOf/3/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err46];
    } else {
      vErrors.push(err46);
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
  const _errs40 = errors;
  let valid21 = true;
  const _errs41 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing4;
    if (data.kind === void 0 && (missing4 = "kind")) {
      const err47 = {};
      if (vErrors === null) {
        vErrors = [err47];
      } else {
        vErrors.push(err47);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data35 = data.kind;
        const _errs43 = errors;
        const _errs44 = errors;
        if (!(data35 === "switch" || data35 === "router" || data35 === "access-point" || data35 === "server" || data35 === "computer")) {
          const err48 = {};
          if (vErrors === null) {
            vErrors = [err48];
          } else {
            vErrors.push(err48);
          }
          errors++;
        }
        var valid23 = _errs44 === errors;
        if (valid23) {
          const err49 = {};
          if (vErrors === null) {
            vErrors = [err49];
          } else {
            vErrors.push(err49);
          }
          errors++;
        } else {
          errors = _errs43;
          if (vErrors !== null) {
            if (_errs43) {
              vErrors.length = _errs43;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid4 = _errs41 === errors;
  errors = _errs40;
  if (vErrors !== null) {
    if (_errs40) {
      vErrors.length = _errs40;
    } else {
      vErrors = null;
    }
  }
  if (_valid4) {
    const _errs45 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.ports !== void 0) {
        let data36 = data.ports;
        if (data36 && typeof data36 == "object" && !Array.isArray(data36)) {
          for (const key2 in data36) {
            let data37 = data36[key2];
            if (data37 && typeof data37 == "object" && !Array.isArray(data37)) {
              if (data37.lag !== void 0) {
                const err50 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/lag", schemaPath: "#/allOf/4/then/properties/ports/additionalProperties/properties/lag/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err50];
                } else {
                  vErrors.push(err50);
                }
                errors++;
              }
              if (data37.lacp !== void 0) {
                const err51 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/lacp", schemaPath: "#/allOf/4/then/properties/ports/additionalProperties/properties/lacp/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err51];
                } else {
                  vErrors.push(err51);
                }
                errors++;
              }
            } else {
              const err52 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/4/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" } };
              if (vErrors === null) {
                vErrors = [err52];
              } else {
                vErrors.push(err52);
              }
              errors++;
            }
          }
        } else {
          const err53 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/4/then/properties/ports/type", keyword: "type", params: { type: "object" } };
          if (vErrors === null) {
            vErrors = [err53];
          } else {
            vErrors.push(err53);
          }
          errors++;
        }
      }
    }
    var _valid4 = _errs45 === errors;
    valid21 = _valid4;
    if (valid21) {
      var props4 = {};
      props4.ports = true;
      props4.kind = true;
    }
  }
  if (!valid21) {
    const err54 = { instancePath, schemaPath: "#/allOf/4/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err54];
    } else {
      vErrors.push(err54);
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
  const _errs52 = errors;
  let valid27 = true;
  const _errs53 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing5;
    if (data.kind === void 0 && (missing5 = "kind")) {
      const err55 = {};
      if (vErrors === null) {
        vErrors = [err55];
      } else {
        vErrors.push(err55);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs55 = errors;
        const _errs56 = errors;
        if (!(data.kind === "access-point")) {
          const err56 = {};
          if (vErrors === null) {
            vErrors = [err56];
          } else {
            vErrors.push(err56);
          }
          errors++;
        }
        var valid29 = _errs56 === errors;
        if (valid29) {
          const err57 = {};
          if (vErrors === null) {
            vErrors = [err57];
          } else {
            vErrors.push(err57);
          }
          errors++;
        } else {
          errors = _errs55;
          if (vErrors !== null) {
            if (_errs55) {
              vErrors.length = _errs55;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid5 = _errs53 === errors;
  errors = _errs52;
  if (vErrors !== null) {
    if (_errs52) {
      vErrors.length = _errs52;
    } else {
      vErrors = null;
    }
  }
  if (_valid5) {
    const _errs57 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["basic-rate"] !== void 0) {
        const err58 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/allOf/5/then/properties/basic-rate/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err58];
        } else {
          vErrors.push(err58);
        }
        errors++;
      }
      if (data["multicast-to-unicast"] !== void 0) {
        const err59 = { instancePath: instancePath + "/multicast-to-unicast", schemaPath: "#/allOf/5/then/properties/multicast-to-unicast/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err59];
        } else {
          vErrors.push(err59);
        }
        errors++;
      }
    }
    var _valid5 = _errs57 === errors;
    valid27 = _valid5;
    if (valid27) {
      var props5 = {};
      props5["basic-rate"] = true;
      props5["multicast-to-unicast"] = true;
      props5.kind = true;
    }
  }
  if (!valid27) {
    const err60 = { instancePath, schemaPath: "#/allOf/5/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err60];
    } else {
      vErrors.push(err60);
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
  const _errs59 = errors;
  let valid31 = true;
  const _errs60 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing6;
    if (data.kind === void 0 && (missing6 = "kind")) {
      const err61 = {};
      if (vErrors === null) {
        vErrors = [err61];
      } else {
        vErrors.push(err61);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data43 = data.kind;
        const _errs62 = errors;
        const _errs63 = errors;
        if (!(data43 === "server" || data43 === "camera" || data43 === "computer" || data43 === "tuner")) {
          const err62 = {};
          if (vErrors === null) {
            vErrors = [err62];
          } else {
            vErrors.push(err62);
          }
          errors++;
        }
        var valid33 = _errs63 === errors;
        if (valid33) {
          const err63 = {};
          if (vErrors === null) {
            vErrors = [err63];
          } else {
            vErrors.push(err63);
          }
          errors++;
        } else {
          errors = _errs62;
          if (vErrors !== null) {
            if (_errs62) {
              vErrors.length = _errs62;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid6 = _errs60 === errors;
  errors = _errs59;
  if (vErrors !== null) {
    if (_errs59) {
      vErrors.length = _errs59;
    } else {
      vErrors = null;
    }
  }
  if (_valid6) {
    const _errs64 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.sessions !== void 0) {
        const err64 = { instancePath: instancePath + "/sessions", schemaPath: "#/allOf/6/then/properties/sessions/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err64];
        } else {
          vErrors.push(err64);
        }
        errors++;
      }
    }
    var _valid6 = _errs64 === errors;
    valid31 = _valid6;
    if (valid31) {
      var props6 = {};
      props6.sessions = true;
      props6.kind = true;
    }
  }
  if (!valid31) {
    const err65 = { instancePath, schemaPath: "#/allOf/6/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err65];
    } else {
      vErrors.push(err65);
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
  const _errs66 = errors;
  let valid35 = true;
  const _errs67 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing7;
    if (data.kind === void 0 && (missing7 = "kind")) {
      const err66 = {};
      if (vErrors === null) {
        vErrors = [err66];
      } else {
        vErrors.push(err66);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data45 = data.kind;
        const _errs69 = errors;
        const _errs70 = errors;
        if (!(data45 === "display" || data45 === "computer")) {
          const err67 = {};
          if (vErrors === null) {
            vErrors = [err67];
          } else {
            vErrors.push(err67);
          }
          errors++;
        }
        var valid37 = _errs70 === errors;
        if (valid37) {
          const err68 = {};
          if (vErrors === null) {
            vErrors = [err68];
          } else {
            vErrors.push(err68);
          }
          errors++;
        } else {
          errors = _errs69;
          if (vErrors !== null) {
            if (_errs69) {
              vErrors.length = _errs69;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid7 = _errs67 === errors;
  errors = _errs66;
  if (vErrors !== null) {
    if (_errs66) {
      vErrors.length = _errs66;
    } else {
      vErrors = null;
    }
  }
  if (_valid7) {
    const _errs71 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.decoders !== void 0) {
        const err69 = { instancePath: instancePath + "/decoders", schemaPath: "#/allOf/7/then/properties/decoders/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err69];
        } else {
          vErrors.push(err69);
        }
        errors++;
      }
      if (data.decodes !== void 0) {
        const err70 = { instancePath: instancePath + "/decodes", schemaPath: "#/allOf/7/then/properties/decodes/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err70];
        } else {
          vErrors.push(err70);
        }
        errors++;
      }
    }
    var _valid7 = _errs71 === errors;
    valid35 = _valid7;
    if (valid35) {
      var props7 = {};
      props7.decoders = true;
      props7.decodes = true;
      props7.kind = true;
    }
  }
  if (!valid35) {
    const err71 = { instancePath, schemaPath: "#/allOf/7/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err71];
    } else {
      vErrors.push(err71);
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
  const _errs73 = errors;
  let valid39 = true;
  const _errs74 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing8;
    if (data.kind === void 0 && (missing8 = "kind")) {
      const err72 = {};
      if (vErrors === null) {
        vErrors = [err72];
      } else {
        vErrors.push(err72);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data48 = data.kind;
        const _errs76 = errors;
        const _errs77 = errors;
        if (!(data48 === "aerial" || data48 === "amplifier" || data48 === "attenuator" || data48 === "equaliser" || data48 === "splitter" || data48 === "tap" || data48 === "combiner" || data48 === "diplexer" || data48 === "multiswitch" || data48 === "outlet" || data48 === "power-inserter" || data48 === "isolator" || data48 === "earth-block")) {
          const err73 = {};
          if (vErrors === null) {
            vErrors = [err73];
          } else {
            vErrors.push(err73);
          }
          errors++;
        }
        var valid41 = _errs77 === errors;
        if (valid41) {
          const err74 = {};
          if (vErrors === null) {
            vErrors = [err74];
          } else {
            vErrors.push(err74);
          }
          errors++;
        } else {
          errors = _errs76;
          if (vErrors !== null) {
            if (_errs76) {
              vErrors.length = _errs76;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid8 = _errs74 === errors;
  errors = _errs73;
  if (vErrors !== null) {
    if (_errs73) {
      vErrors.length = _errs73;
    } else {
      vErrors = null;
    }
  }
  if (_valid8) {
    const _errs78 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.frequencies !== void 0) {
        const err75 = { instancePath: instancePath + "/frequencies", schemaPath: "#/allOf/8/then/properties/frequencies/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err75];
        } else {
          vErrors.push(err75);
        }
        errors++;
      }
    }
    var _valid8 = _errs78 === errors;
    valid39 = _valid8;
    if (valid39) {
      var props8 = {};
      props8.frequencies = true;
      props8.kind = true;
    }
  }
  if (!valid39) {
    const err76 = { instancePath, schemaPath: "#/allOf/8/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err76];
    } else {
      vErrors.push(err76);
    }
    errors++;
  }
  if (props0 !== true && props8 !== void 0) {
    if (props8 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props8);
    }
  }
  const _errs80 = errors;
  let valid43 = true;
  const _errs81 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing9;
    if (data.kind === void 0 && (missing9 = "kind")) {
      const err77 = {};
      if (vErrors === null) {
        vErrors = [err77];
      } else {
        vErrors.push(err77);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs83 = errors;
        const _errs84 = errors;
        if (!(data.kind === "filter")) {
          const err78 = {};
          if (vErrors === null) {
            vErrors = [err78];
          } else {
            vErrors.push(err78);
          }
          errors++;
        }
        var valid45 = _errs84 === errors;
        if (valid45) {
          const err79 = {};
          if (vErrors === null) {
            vErrors = [err79];
          } else {
            vErrors.push(err79);
          }
          errors++;
        } else {
          errors = _errs83;
          if (vErrors !== null) {
            if (_errs83) {
              vErrors.length = _errs83;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid9 = _errs81 === errors;
  errors = _errs80;
  if (vErrors !== null) {
    if (_errs80) {
      vErrors.length = _errs80;
    } else {
      vErrors = null;
    }
  }
  if (_valid9) {
    const _errs85 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.passes !== void 0) {
        const err80 = { instancePath: instancePath + "/passes", schemaPath: "#/allOf/9/then/properties/passes/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err80];
        } else {
          vErrors.push(err80);
        }
        errors++;
      }
    }
    var _valid9 = _errs85 === errors;
    valid43 = _valid9;
    if (valid43) {
      var props9 = {};
      props9.passes = true;
      props9.kind = true;
    }
  }
  if (!valid43) {
    const err81 = { instancePath, schemaPath: "#/allOf/9/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err81];
    } else {
      vErrors.push(err81);
    }
    errors++;
  }
  if (props0 !== true && props9 !== void 0) {
    if (props9 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props9);
    }
  }
  const _errs87 = errors;
  let valid47 = true;
  const _errs88 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing10;
    if (data.kind === void 0 && (missing10 = "kind")) {
      const err82 = {};
      if (vErrors === null) {
        vErrors = [err82];
      } else {
        vErrors.push(err82);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data52 = data.kind;
        const _errs90 = errors;
        const _errs91 = errors;
        if (!(data52 === "aerial" || data52 === "lnb")) {
          const err83 = {};
          if (vErrors === null) {
            vErrors = [err83];
          } else {
            vErrors.push(err83);
          }
          errors++;
        }
        var valid49 = _errs91 === errors;
        if (valid49) {
          const err84 = {};
          if (vErrors === null) {
            vErrors = [err84];
          } else {
            vErrors.push(err84);
          }
          errors++;
        } else {
          errors = _errs90;
          if (vErrors !== null) {
            if (_errs90) {
              vErrors.length = _errs90;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid10 = _errs88 === errors;
  errors = _errs87;
  if (vErrors !== null) {
    if (_errs87) {
      vErrors.length = _errs87;
    } else {
      vErrors = null;
    }
  }
  if (_valid10) {
    const _errs92 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.receives !== void 0) {
        const err85 = { instancePath: instancePath + "/receives", schemaPath: "#/allOf/10/then/properties/receives/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err85];
        } else {
          vErrors.push(err85);
        }
        errors++;
      }
      if (data.quality !== void 0) {
        const err86 = { instancePath: instancePath + "/quality", schemaPath: "#/allOf/10/then/properties/quality/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err86];
        } else {
          vErrors.push(err86);
        }
        errors++;
      }
      if (data.mast !== void 0) {
        const err87 = { instancePath: instancePath + "/mast", schemaPath: "#/allOf/10/then/properties/mast/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err87];
        } else {
          vErrors.push(err87);
        }
        errors++;
      }
    }
    var _valid10 = _errs92 === errors;
    valid47 = _valid10;
    if (valid47) {
      var props10 = {};
      props10.receives = true;
      props10.quality = true;
      props10.mast = true;
      props10.kind = true;
    }
  }
  if (!valid47) {
    const err88 = { instancePath, schemaPath: "#/allOf/10/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err88];
    } else {
      vErrors.push(err88);
    }
    errors++;
  }
  if (props0 !== true && props10 !== void 0) {
    if (props10 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props10);
    }
  }
  const _errs94 = errors;
  let valid51 = true;
  const _errs95 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing11;
    if (data.kind === void 0 && (missing11 = "kind")) {
      const err89 = {};
      if (vErrors === null) {
        vErrors = [err89];
      } else {
        vErrors.push(err89);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs97 = errors;
        const _errs98 = errors;
        if (!(data.kind === "aerial")) {
          const err90 = {};
          if (vErrors === null) {
            vErrors = [err90];
          } else {
            vErrors.push(err90);
          }
          errors++;
        }
        var valid53 = _errs98 === errors;
        if (valid53) {
          const err91 = {};
          if (vErrors === null) {
            vErrors = [err91];
          } else {
            vErrors.push(err91);
          }
          errors++;
        } else {
          errors = _errs97;
          if (vErrors !== null) {
            if (_errs97) {
              vErrors.length = _errs97;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid11 = _errs95 === errors;
  errors = _errs94;
  if (vErrors !== null) {
    if (_errs94) {
      vErrors.length = _errs94;
    } else {
      vErrors = null;
    }
  }
  if (_valid11) {
    const _errs99 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.field !== void 0) {
        const err92 = { instancePath: instancePath + "/field", schemaPath: "#/allOf/11/then/properties/field/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err92];
        } else {
          vErrors.push(err92);
        }
        errors++;
      }
    }
    var _valid11 = _errs99 === errors;
    valid51 = _valid11;
    if (valid51) {
      var props11 = {};
      props11.field = true;
      props11.kind = true;
    }
  }
  if (!valid51) {
    const err93 = { instancePath, schemaPath: "#/allOf/11/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err93];
    } else {
      vErrors.push(err93);
    }
    errors++;
  }
  if (props0 !== true && props11 !== void 0) {
    if (props11 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props11);
    }
  }
  const _errs101 = errors;
  let valid55 = true;
  const _errs102 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing12;
    if (data.kind === void 0 && (missing12 = "kind")) {
      const err94 = {};
      if (vErrors === null) {
        vErrors = [err94];
      } else {
        vErrors.push(err94);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data58 = data.kind;
        const _errs104 = errors;
        const _errs105 = errors;
        if (!(data58 === "aerial" || data58 === "amplifier")) {
          const err95 = {};
          if (vErrors === null) {
            vErrors = [err95];
          } else {
            vErrors.push(err95);
          }
          errors++;
        }
        var valid57 = _errs105 === errors;
        if (valid57) {
          const err96 = {};
          if (vErrors === null) {
            vErrors = [err96];
          } else {
            vErrors.push(err96);
          }
          errors++;
        } else {
          errors = _errs104;
          if (vErrors !== null) {
            if (_errs104) {
              vErrors.length = _errs104;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid12 = _errs102 === errors;
  errors = _errs101;
  if (vErrors !== null) {
    if (_errs101) {
      vErrors.length = _errs101;
    } else {
      vErrors = null;
    }
  }
  if (_valid12) {
    const _errs106 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.gain !== void 0) {
        const err97 = { instancePath: instancePath + "/gain", schemaPath: "#/allOf/12/then/properties/gain/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err97];
        } else {
          vErrors.push(err97);
        }
        errors++;
      }
    }
    var _valid12 = _errs106 === errors;
    valid55 = _valid12;
    if (valid55) {
      var props12 = {};
      props12.gain = true;
      props12.kind = true;
    }
  }
  if (!valid55) {
    const err98 = { instancePath, schemaPath: "#/allOf/12/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err98];
    } else {
      vErrors.push(err98);
    }
    errors++;
  }
  if (props0 !== true && props12 !== void 0) {
    if (props12 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props12);
    }
  }
  const _errs108 = errors;
  let valid59 = true;
  const _errs109 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing13;
    if (data.kind === void 0 && (missing13 = "kind")) {
      const err99 = {};
      if (vErrors === null) {
        vErrors = [err99];
      } else {
        vErrors.push(err99);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data60 = data.kind;
        const _errs111 = errors;
        const _errs112 = errors;
        if (!(data60 === "lnb" || data60 === "amplifier")) {
          const err100 = {};
          if (vErrors === null) {
            vErrors = [err100];
          } else {
            vErrors.push(err100);
          }
          errors++;
        }
        var valid61 = _errs112 === errors;
        if (valid61) {
          const err101 = {};
          if (vErrors === null) {
            vErrors = [err101];
          } else {
            vErrors.push(err101);
          }
          errors++;
        } else {
          errors = _errs111;
          if (vErrors !== null) {
            if (_errs111) {
              vErrors.length = _errs111;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid13 = _errs109 === errors;
  errors = _errs108;
  if (vErrors !== null) {
    if (_errs108) {
      vErrors.length = _errs108;
    } else {
      vErrors = null;
    }
  }
  if (_valid13) {
    const _errs113 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["noise-figure"] !== void 0) {
        const err102 = { instancePath: instancePath + "/noise-figure", schemaPath: "#/allOf/13/then/properties/noise-figure/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err102];
        } else {
          vErrors.push(err102);
        }
        errors++;
      }
    }
    var _valid13 = _errs113 === errors;
    valid59 = _valid13;
    if (valid59) {
      var props13 = {};
      props13["noise-figure"] = true;
      props13.kind = true;
    }
  }
  if (!valid59) {
    const err103 = { instancePath, schemaPath: "#/allOf/13/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err103];
    } else {
      vErrors.push(err103);
    }
    errors++;
  }
  if (props0 !== true && props13 !== void 0) {
    if (props13 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props13);
    }
  }
  const _errs115 = errors;
  let valid63 = true;
  const _errs116 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing14;
    if (data.kind === void 0 && (missing14 = "kind")) {
      const err104 = {};
      if (vErrors === null) {
        vErrors = [err104];
      } else {
        vErrors.push(err104);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs118 = errors;
        const _errs119 = errors;
        if (!(data.kind === "amplifier")) {
          const err105 = {};
          if (vErrors === null) {
            vErrors = [err105];
          } else {
            vErrors.push(err105);
          }
          errors++;
        }
        var valid65 = _errs119 === errors;
        if (valid65) {
          const err106 = {};
          if (vErrors === null) {
            vErrors = [err106];
          } else {
            vErrors.push(err106);
          }
          errors++;
        } else {
          errors = _errs118;
          if (vErrors !== null) {
            if (_errs118) {
              vErrors.length = _errs118;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid14 = _errs116 === errors;
  errors = _errs115;
  if (vErrors !== null) {
    if (_errs115) {
      vErrors.length = _errs115;
    } else {
      vErrors = null;
    }
  }
  if (_valid14) {
    const _errs120 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["max-output"] !== void 0) {
        const err107 = { instancePath: instancePath + "/max-output", schemaPath: "#/allOf/14/then/properties/max-output/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err107];
        } else {
          vErrors.push(err107);
        }
        errors++;
      }
      if (data["powered-by"] !== void 0) {
        const err108 = { instancePath: instancePath + "/powered-by", schemaPath: "#/allOf/14/then/properties/powered-by/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err108];
        } else {
          vErrors.push(err108);
        }
        errors++;
      }
    }
    var _valid14 = _errs120 === errors;
    valid63 = _valid14;
    if (valid63) {
      var props14 = {};
      props14["max-output"] = true;
      props14["powered-by"] = true;
      props14.kind = true;
    }
  }
  if (!valid63) {
    const err109 = { instancePath, schemaPath: "#/allOf/14/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err109];
    } else {
      vErrors.push(err109);
    }
    errors++;
  }
  if (props0 !== true && props14 !== void 0) {
    if (props14 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props14);
    }
  }
  const _errs122 = errors;
  let valid67 = true;
  const _errs123 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing15;
    if (data.kind === void 0 && (missing15 = "kind")) {
      const err110 = {};
      if (vErrors === null) {
        vErrors = [err110];
      } else {
        vErrors.push(err110);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data65 = data.kind;
        const _errs125 = errors;
        const _errs126 = errors;
        if (!(data65 === "amplifier" || data65 === "power-inserter")) {
          const err111 = {};
          if (vErrors === null) {
            vErrors = [err111];
          } else {
            vErrors.push(err111);
          }
          errors++;
        }
        var valid69 = _errs126 === errors;
        if (valid69) {
          const err112 = {};
          if (vErrors === null) {
            vErrors = [err112];
          } else {
            vErrors.push(err112);
          }
          errors++;
        } else {
          errors = _errs125;
          if (vErrors !== null) {
            if (_errs125) {
              vErrors.length = _errs125;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid15 = _errs123 === errors;
  errors = _errs122;
  if (vErrors !== null) {
    if (_errs122) {
      vErrors.length = _errs122;
    } else {
      vErrors = null;
    }
  }
  if (_valid15) {
    const _errs127 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.supply !== void 0) {
        const err113 = { instancePath: instancePath + "/supply", schemaPath: "#/allOf/15/then/properties/supply/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err113];
        } else {
          vErrors.push(err113);
        }
        errors++;
      }
    }
    var _valid15 = _errs127 === errors;
    valid67 = _valid15;
    if (valid67) {
      var props15 = {};
      props15.supply = true;
      props15.kind = true;
    }
  }
  if (!valid67) {
    const err114 = { instancePath, schemaPath: "#/allOf/15/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err114];
    } else {
      vErrors.push(err114);
    }
    errors++;
  }
  if (props0 !== true && props15 !== void 0) {
    if (props15 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props15);
    }
  }
  const _errs129 = errors;
  let valid71 = true;
  const _errs130 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing16;
    if (data.kind === void 0 && (missing16 = "kind")) {
      const err115 = {};
      if (vErrors === null) {
        vErrors = [err115];
      } else {
        vErrors.push(err115);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data67 = data.kind;
        const _errs132 = errors;
        const _errs133 = errors;
        if (!(data67 === "lnb" || data67 === "amplifier" || data67 === "multiswitch" || data67 === "power-inserter")) {
          const err116 = {};
          if (vErrors === null) {
            vErrors = [err116];
          } else {
            vErrors.push(err116);
          }
          errors++;
        }
        var valid73 = _errs133 === errors;
        if (valid73) {
          const err117 = {};
          if (vErrors === null) {
            vErrors = [err117];
          } else {
            vErrors.push(err117);
          }
          errors++;
        } else {
          errors = _errs132;
          if (vErrors !== null) {
            if (_errs132) {
              vErrors.length = _errs132;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid16 = _errs130 === errors;
  errors = _errs129;
  if (vErrors !== null) {
    if (_errs129) {
      vErrors.length = _errs129;
    } else {
      vErrors = null;
    }
  }
  if (_valid16) {
    const _errs134 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.current !== void 0) {
        const err118 = { instancePath: instancePath + "/current", schemaPath: "#/allOf/16/then/properties/current/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err118];
        } else {
          vErrors.push(err118);
        }
        errors++;
      }
    }
    var _valid16 = _errs134 === errors;
    valid71 = _valid16;
    if (valid71) {
      var props16 = {};
      props16.current = true;
      props16.kind = true;
    }
  }
  if (!valid71) {
    const err119 = { instancePath, schemaPath: "#/allOf/16/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err119];
    } else {
      vErrors.push(err119);
    }
    errors++;
  }
  if (props0 !== true && props16 !== void 0) {
    if (props16 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props16);
    }
  }
  const _errs136 = errors;
  let valid75 = true;
  const _errs137 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing17;
    if (data.kind === void 0 && (missing17 = "kind")) {
      const err120 = {};
      if (vErrors === null) {
        vErrors = [err120];
      } else {
        vErrors.push(err120);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data69 = data.kind;
        const _errs139 = errors;
        const _errs140 = errors;
        if (!(data69 === "attenuator" || data69 === "filter" || data69 === "equaliser" || data69 === "splitter" || data69 === "tap" || data69 === "combiner" || data69 === "diplexer" || data69 === "multiswitch" || data69 === "outlet" || data69 === "power-inserter" || data69 === "isolator" || data69 === "earth-block")) {
          const err121 = {};
          if (vErrors === null) {
            vErrors = [err121];
          } else {
            vErrors.push(err121);
          }
          errors++;
        }
        var valid77 = _errs140 === errors;
        if (valid77) {
          const err122 = {};
          if (vErrors === null) {
            vErrors = [err122];
          } else {
            vErrors.push(err122);
          }
          errors++;
        } else {
          errors = _errs139;
          if (vErrors !== null) {
            if (_errs139) {
              vErrors.length = _errs139;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid17 = _errs137 === errors;
  errors = _errs136;
  if (vErrors !== null) {
    if (_errs136) {
      vErrors.length = _errs136;
    } else {
      vErrors = null;
    }
  }
  if (_valid17) {
    const _errs141 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.loss !== void 0) {
        const err123 = { instancePath: instancePath + "/loss", schemaPath: "#/allOf/17/then/properties/loss/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err123];
        } else {
          vErrors.push(err123);
        }
        errors++;
      }
    }
    var _valid17 = _errs141 === errors;
    valid75 = _valid17;
    if (valid75) {
      var props17 = {};
      props17.loss = true;
      props17.kind = true;
    }
  }
  if (!valid75) {
    const err124 = { instancePath, schemaPath: "#/allOf/17/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err124];
    } else {
      vErrors.push(err124);
    }
    errors++;
  }
  if (props0 !== true && props17 !== void 0) {
    if (props17 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props17);
    }
  }
  const _errs143 = errors;
  let valid79 = true;
  const _errs144 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing18;
    if (data.kind === void 0 && (missing18 = "kind")) {
      const err125 = {};
      if (vErrors === null) {
        vErrors = [err125];
      } else {
        vErrors.push(err125);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data71 = data.kind;
        const _errs146 = errors;
        const _errs147 = errors;
        if (!(data71 === "amplifier" || data71 === "attenuator" || data71 === "filter" || data71 === "equaliser" || data71 === "splitter" || data71 === "tap" || data71 === "combiner" || data71 === "diplexer" || data71 === "multiswitch" || data71 === "outlet" || data71 === "power-inserter" || data71 === "isolator" || data71 === "earth-block")) {
          const err126 = {};
          if (vErrors === null) {
            vErrors = [err126];
          } else {
            vErrors.push(err126);
          }
          errors++;
        }
        var valid81 = _errs147 === errors;
        if (valid81) {
          const err127 = {};
          if (vErrors === null) {
            vErrors = [err127];
          } else {
            vErrors.push(err127);
          }
          errors++;
        } else {
          errors = _errs146;
          if (vErrors !== null) {
            if (_errs146) {
              vErrors.length = _errs146;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid18 = _errs144 === errors;
  errors = _errs143;
  if (vErrors !== null) {
    if (_errs143) {
      vErrors.length = _errs143;
    } else {
      vErrors = null;
    }
  }
  if (_valid18) {
    const _errs148 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["power-pass"] !== void 0) {
        const err128 = { instancePath: instancePath + "/power-pass", schemaPath: "#/allOf/18/then/properties/power-pass/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err128];
        } else {
          vErrors.push(err128);
        }
        errors++;
      }
    }
    var _valid18 = _errs148 === errors;
    valid79 = _valid18;
    if (valid79) {
      var props18 = {};
      props18["power-pass"] = true;
      props18.kind = true;
    }
  }
  if (!valid79) {
    const err129 = { instancePath, schemaPath: "#/allOf/18/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err129];
    } else {
      vErrors.push(err129);
    }
    errors++;
  }
  if (props0 !== true && props18 !== void 0) {
    if (props18 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props18);
    }
  }
  const _errs150 = errors;
  let valid83 = true;
  const _errs151 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing19;
    if (data.kind === void 0 && (missing19 = "kind")) {
      const err130 = {};
      if (vErrors === null) {
        vErrors = [err130];
      } else {
        vErrors.push(err130);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs153 = errors;
        const _errs154 = errors;
        if (!(data.kind === "tap")) {
          const err131 = {};
          if (vErrors === null) {
            vErrors = [err131];
          } else {
            vErrors.push(err131);
          }
          errors++;
        }
        var valid85 = _errs154 === errors;
        if (valid85) {
          const err132 = {};
          if (vErrors === null) {
            vErrors = [err132];
          } else {
            vErrors.push(err132);
          }
          errors++;
        } else {
          errors = _errs153;
          if (vErrors !== null) {
            if (_errs153) {
              vErrors.length = _errs153;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid19 = _errs151 === errors;
  errors = _errs150;
  if (vErrors !== null) {
    if (_errs150) {
      vErrors.length = _errs150;
    } else {
      vErrors = null;
    }
  }
  if (_valid19) {
    const _errs155 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data["tap-loss"] !== void 0) {
        const err133 = { instancePath: instancePath + "/tap-loss", schemaPath: "#/allOf/19/then/properties/tap-loss/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err133];
        } else {
          vErrors.push(err133);
        }
        errors++;
      }
    }
    var _valid19 = _errs155 === errors;
    valid83 = _valid19;
    if (valid83) {
      var props19 = {};
      props19["tap-loss"] = true;
      props19.kind = true;
    }
  }
  if (!valid83) {
    const err134 = { instancePath, schemaPath: "#/allOf/19/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err134];
    } else {
      vErrors.push(err134);
    }
    errors++;
  }
  if (props0 !== true && props19 !== void 0) {
    if (props19 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props19);
    }
  }
  const _errs157 = errors;
  let valid87 = true;
  const _errs158 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing20;
    if (data.kind === void 0 && (missing20 = "kind")) {
      const err135 = {};
      if (vErrors === null) {
        vErrors = [err135];
      } else {
        vErrors.push(err135);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs160 = errors;
        const _errs161 = errors;
        if (!(data.kind === "equaliser")) {
          const err136 = {};
          if (vErrors === null) {
            vErrors = [err136];
          } else {
            vErrors.push(err136);
          }
          errors++;
        }
        var valid89 = _errs161 === errors;
        if (valid89) {
          const err137 = {};
          if (vErrors === null) {
            vErrors = [err137];
          } else {
            vErrors.push(err137);
          }
          errors++;
        } else {
          errors = _errs160;
          if (vErrors !== null) {
            if (_errs160) {
              vErrors.length = _errs160;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid20 = _errs158 === errors;
  errors = _errs157;
  if (vErrors !== null) {
    if (_errs157) {
      vErrors.length = _errs157;
    } else {
      vErrors = null;
    }
  }
  if (_valid20) {
    const _errs162 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.slope !== void 0) {
        const err138 = { instancePath: instancePath + "/slope", schemaPath: "#/allOf/20/then/properties/slope/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err138];
        } else {
          vErrors.push(err138);
        }
        errors++;
      }
    }
    var _valid20 = _errs162 === errors;
    valid87 = _valid20;
    if (valid87) {
      var props20 = {};
      props20.slope = true;
      props20.kind = true;
    }
  }
  if (!valid87) {
    const err139 = { instancePath, schemaPath: "#/allOf/20/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err139];
    } else {
      vErrors.push(err139);
    }
    errors++;
  }
  if (props0 !== true && props20 !== void 0) {
    if (props20 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props20);
    }
  }
  const _errs164 = errors;
  let valid91 = true;
  const _errs165 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing21;
    if (data.kind === void 0 && (missing21 = "kind")) {
      const err140 = {};
      if (vErrors === null) {
        vErrors = [err140];
      } else {
        vErrors.push(err140);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data77 = data.kind;
        const _errs167 = errors;
        const _errs168 = errors;
        if (!(data77 === "splitter" || data77 === "tap" || data77 === "multiswitch")) {
          const err141 = {};
          if (vErrors === null) {
            vErrors = [err141];
          } else {
            vErrors.push(err141);
          }
          errors++;
        }
        var valid93 = _errs168 === errors;
        if (valid93) {
          const err142 = {};
          if (vErrors === null) {
            vErrors = [err142];
          } else {
            vErrors.push(err142);
          }
          errors++;
        } else {
          errors = _errs167;
          if (vErrors !== null) {
            if (_errs167) {
              vErrors.length = _errs167;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid21 = _errs165 === errors;
  errors = _errs164;
  if (vErrors !== null) {
    if (_errs164) {
      vErrors.length = _errs164;
    } else {
      vErrors = null;
    }
  }
  if (_valid21) {
    const _errs169 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.ways !== void 0) {
        const err143 = { instancePath: instancePath + "/ways", schemaPath: "#/allOf/21/then/properties/ways/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err143];
        } else {
          vErrors.push(err143);
        }
        errors++;
      }
    }
    var _valid21 = _errs169 === errors;
    valid91 = _valid21;
    if (valid91) {
      var props21 = {};
      props21.ways = true;
      props21.kind = true;
    }
  }
  if (!valid91) {
    const err144 = { instancePath, schemaPath: "#/allOf/21/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err144];
    } else {
      vErrors.push(err144);
    }
    errors++;
  }
  if (props0 !== true && props21 !== void 0) {
    if (props21 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props21);
    }
  }
  const _errs171 = errors;
  let valid95 = true;
  const _errs172 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing22;
    if (data.kind === void 0 && (missing22 = "kind")) {
      const err145 = {};
      if (vErrors === null) {
        vErrors = [err145];
      } else {
        vErrors.push(err145);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data79 = data.kind;
        const _errs174 = errors;
        const _errs175 = errors;
        if (!(data79 === "lnb" || data79 === "splitter" || data79 === "tap" || data79 === "combiner" || data79 === "diplexer" || data79 === "multiswitch" || data79 === "outlet")) {
          const err146 = {};
          if (vErrors === null) {
            vErrors = [err146];
          } else {
            vErrors.push(err146);
          }
          errors++;
        }
        var valid97 = _errs175 === errors;
        if (valid97) {
          const err147 = {};
          if (vErrors === null) {
            vErrors = [err147];
          } else {
            vErrors.push(err147);
          }
          errors++;
        } else {
          errors = _errs174;
          if (vErrors !== null) {
            if (_errs174) {
              vErrors.length = _errs174;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid22 = _errs172 === errors;
  errors = _errs171;
  if (vErrors !== null) {
    if (_errs171) {
      vErrors.length = _errs171;
    } else {
      vErrors = null;
    }
  }
  if (_valid22) {
    const _errs176 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.terminated !== void 0) {
        const err148 = { instancePath: instancePath + "/terminated", schemaPath: "#/allOf/22/then/properties/terminated/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err148];
        } else {
          vErrors.push(err148);
        }
        errors++;
      }
    }
    var _valid22 = _errs176 === errors;
    valid95 = _valid22;
    if (valid95) {
      var props22 = {};
      props22.terminated = true;
      props22.kind = true;
    }
  }
  if (!valid95) {
    const err149 = { instancePath, schemaPath: "#/allOf/22/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err149];
    } else {
      vErrors.push(err149);
    }
    errors++;
  }
  if (props0 !== true && props22 !== void 0) {
    if (props22 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props22);
    }
  }
  const _errs178 = errors;
  let valid99 = true;
  const _errs179 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing23;
    if (data.kind === void 0 && (missing23 = "kind")) {
      const err150 = {};
      if (vErrors === null) {
        vErrors = [err150];
      } else {
        vErrors.push(err150);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data81 = data.kind;
        const _errs181 = errors;
        const _errs182 = errors;
        if (!(data81 === "splitter" || data81 === "tap" || data81 === "combiner" || data81 === "diplexer" || data81 === "multiswitch" || data81 === "outlet")) {
          const err151 = {};
          if (vErrors === null) {
            vErrors = [err151];
          } else {
            vErrors.push(err151);
          }
          errors++;
        }
        var valid101 = _errs182 === errors;
        if (valid101) {
          const err152 = {};
          if (vErrors === null) {
            vErrors = [err152];
          } else {
            vErrors.push(err152);
          }
          errors++;
        } else {
          errors = _errs181;
          if (vErrors !== null) {
            if (_errs181) {
              vErrors.length = _errs181;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid23 = _errs179 === errors;
  errors = _errs178;
  if (vErrors !== null) {
    if (_errs178) {
      vErrors.length = _errs178;
    } else {
      vErrors = null;
    }
  }
  if (_valid23) {
    const _errs183 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.isolation !== void 0) {
        const err153 = { instancePath: instancePath + "/isolation", schemaPath: "#/allOf/23/then/properties/isolation/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err153];
        } else {
          vErrors.push(err153);
        }
        errors++;
      }
    }
    var _valid23 = _errs183 === errors;
    valid99 = _valid23;
    if (valid99) {
      var props23 = {};
      props23.isolation = true;
      props23.kind = true;
    }
  }
  if (!valid99) {
    const err154 = { instancePath, schemaPath: "#/allOf/23/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err154];
    } else {
      vErrors.push(err154);
    }
    errors++;
  }
  if (props0 !== true && props23 !== void 0) {
    if (props23 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props23);
    }
  }
  const _errs185 = errors;
  let valid103 = true;
  const _errs186 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing24;
    if (data.kind === void 0 && (missing24 = "kind")) {
      const err155 = {};
      if (vErrors === null) {
        vErrors = [err155];
      } else {
        vErrors.push(err155);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs188 = errors;
        const _errs189 = errors;
        if (!(data.kind === "lnb")) {
          const err156 = {};
          if (vErrors === null) {
            vErrors = [err156];
          } else {
            vErrors.push(err156);
          }
          errors++;
        }
        var valid105 = _errs189 === errors;
        if (valid105) {
          const err157 = {};
          if (vErrors === null) {
            vErrors = [err157];
          } else {
            vErrors.push(err157);
          }
          errors++;
        } else {
          errors = _errs188;
          if (vErrors !== null) {
            if (_errs188) {
              vErrors.length = _errs188;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid24 = _errs186 === errors;
  errors = _errs185;
  if (vErrors !== null) {
    if (_errs185) {
      vErrors.length = _errs185;
    } else {
      vErrors = null;
    }
  }
  if (_valid24) {
    const _errs190 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.type !== void 0) {
        const err158 = { instancePath: instancePath + "/type", schemaPath: "#/allOf/24/then/properties/type/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err158];
        } else {
          vErrors.push(err158);
        }
        errors++;
      }
    }
    var _valid24 = _errs190 === errors;
    valid103 = _valid24;
    if (valid103) {
      var props24 = {};
      props24.type = true;
      props24.kind = true;
    }
  }
  if (!valid103) {
    const err159 = { instancePath, schemaPath: "#/allOf/24/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err159];
    } else {
      vErrors.push(err159);
    }
    errors++;
  }
  if (props0 !== true && props24 !== void 0) {
    if (props24 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props24);
    }
  }
  const _errs192 = errors;
  let valid107 = true;
  const _errs193 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing25;
    if (data.kind === void 0 && (missing25 = "kind")) {
      const err160 = {};
      if (vErrors === null) {
        vErrors = [err160];
      } else {
        vErrors.push(err160);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data85 = data.kind;
        const _errs195 = errors;
        const _errs196 = errors;
        if (!(data85 === "display" || data85 === "tuner" || data85 === "combiner")) {
          const err161 = {};
          if (vErrors === null) {
            vErrors = [err161];
          } else {
            vErrors.push(err161);
          }
          errors++;
        }
        var valid109 = _errs196 === errors;
        if (valid109) {
          const err162 = {};
          if (vErrors === null) {
            vErrors = [err162];
          } else {
            vErrors.push(err162);
          }
          errors++;
        } else {
          errors = _errs195;
          if (vErrors !== null) {
            if (_errs195) {
              vErrors.length = _errs195;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid25 = _errs193 === errors;
  errors = _errs192;
  if (vErrors !== null) {
    if (_errs192) {
      vErrors.length = _errs192;
    } else {
      vErrors = null;
    }
  }
  if (_valid25) {
    const _errs197 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.inputs !== void 0) {
        const err163 = { instancePath: instancePath + "/inputs", schemaPath: "#/allOf/25/then/properties/inputs/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err163];
        } else {
          vErrors.push(err163);
        }
        errors++;
      }
    }
    var _valid25 = _errs197 === errors;
    valid107 = _valid25;
    if (valid107) {
      var props25 = {};
      props25.inputs = true;
      props25.kind = true;
    }
  }
  if (!valid107) {
    const err164 = { instancePath, schemaPath: "#/allOf/25/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err164];
    } else {
      vErrors.push(err164);
    }
    errors++;
  }
  if (props0 !== true && props25 !== void 0) {
    if (props25 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props25);
    }
  }
  const _errs199 = errors;
  let valid111 = true;
  const _errs200 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing26;
    if (data.kind === void 0 && (missing26 = "kind")) {
      const err165 = {};
      if (vErrors === null) {
        vErrors = [err165];
      } else {
        vErrors.push(err165);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs202 = errors;
        const _errs203 = errors;
        if (!(data.kind === "tuner")) {
          const err166 = {};
          if (vErrors === null) {
            vErrors = [err166];
          } else {
            vErrors.push(err166);
          }
          errors++;
        }
        var valid113 = _errs203 === errors;
        if (valid113) {
          const err167 = {};
          if (vErrors === null) {
            vErrors = [err167];
          } else {
            vErrors.push(err167);
          }
          errors++;
        } else {
          errors = _errs202;
          if (vErrors !== null) {
            if (_errs202) {
              vErrors.length = _errs202;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid26 = _errs200 === errors;
  errors = _errs199;
  if (vErrors !== null) {
    if (_errs199) {
      vErrors.length = _errs199;
    } else {
      vErrors = null;
    }
  }
  if (_valid26) {
    const _errs204 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.tuners !== void 0) {
        const err168 = { instancePath: instancePath + "/tuners", schemaPath: "#/allOf/26/then/properties/tuners/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err168];
        } else {
          vErrors.push(err168);
        }
        errors++;
      }
      if (data.host !== void 0) {
        const err169 = { instancePath: instancePath + "/host", schemaPath: "#/allOf/26/then/properties/host/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err169];
        } else {
          vErrors.push(err169);
        }
        errors++;
      }
      if (data.bus !== void 0) {
        const err170 = { instancePath: instancePath + "/bus", schemaPath: "#/allOf/26/then/properties/bus/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err170];
        } else {
          vErrors.push(err170);
        }
        errors++;
      }
    }
    var _valid26 = _errs204 === errors;
    valid111 = _valid26;
    if (valid111) {
      var props26 = {};
      props26.tuners = true;
      props26.host = true;
      props26.bus = true;
      props26.kind = true;
    }
  }
  if (!valid111) {
    const err171 = { instancePath, schemaPath: "#/allOf/26/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err171];
    } else {
      vErrors.push(err171);
    }
    errors++;
  }
  if (props0 !== true && props26 !== void 0) {
    if (props26 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props26);
    }
  }
  const _errs206 = errors;
  let valid115 = true;
  const _errs207 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing27;
    if (data.kind === void 0 && (missing27 = "kind")) {
      const err172 = {};
      if (vErrors === null) {
        vErrors = [err172];
      } else {
        vErrors.push(err172);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data91 = data.kind;
        const _errs209 = errors;
        const _errs210 = errors;
        if (!(data91 === "router" || data91 === "server" || data91 === "computer")) {
          const err173 = {};
          if (vErrors === null) {
            vErrors = [err173];
          } else {
            vErrors.push(err173);
          }
          errors++;
        }
        var valid117 = _errs210 === errors;
        if (valid117) {
          const err174 = {};
          if (vErrors === null) {
            vErrors = [err174];
          } else {
            vErrors.push(err174);
          }
          errors++;
        } else {
          errors = _errs209;
          if (vErrors !== null) {
            if (_errs209) {
              vErrors.length = _errs209;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid27 = _errs207 === errors;
  errors = _errs206;
  if (vErrors !== null) {
    if (_errs206) {
      vErrors.length = _errs206;
    } else {
      vErrors = null;
    }
  }
  if (_valid27) {
    const _errs211 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.buses !== void 0) {
        const err175 = { instancePath: instancePath + "/buses", schemaPath: "#/allOf/27/then/properties/buses/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err175];
        } else {
          vErrors.push(err175);
        }
        errors++;
      }
    }
    var _valid27 = _errs211 === errors;
    valid115 = _valid27;
    if (valid115) {
      var props27 = {};
      props27.buses = true;
      props27.kind = true;
    }
  }
  if (!valid115) {
    const err176 = { instancePath, schemaPath: "#/allOf/27/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err176];
    } else {
      vErrors.push(err176);
    }
    errors++;
  }
  if (props0 !== true && props27 !== void 0) {
    if (props27 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props27);
    }
  }
  const _errs213 = errors;
  let valid119 = true;
  const _errs214 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing28;
    if (data.kind === void 0 && (missing28 = "kind")) {
      const err177 = {};
      if (vErrors === null) {
        vErrors = [err177];
      } else {
        vErrors.push(err177);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs216 = errors;
        const _errs217 = errors;
        if (!(data.kind === "internet")) {
          const err178 = {};
          if (vErrors === null) {
            vErrors = [err178];
          } else {
            vErrors.push(err178);
          }
          errors++;
        }
        var valid121 = _errs217 === errors;
        if (valid121) {
          const err179 = {};
          if (vErrors === null) {
            vErrors = [err179];
          } else {
            vErrors.push(err179);
          }
          errors++;
        } else {
          errors = _errs216;
          if (vErrors !== null) {
            if (_errs216) {
              vErrors.length = _errs216;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid28 = _errs214 === errors;
  errors = _errs213;
  if (vErrors !== null) {
    if (_errs213) {
      vErrors.length = _errs213;
    } else {
      vErrors = null;
    }
  }
  if (_valid28) {
    const _errs218 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.down !== void 0) {
        const err180 = { instancePath: instancePath + "/down", schemaPath: "#/allOf/28/then/properties/down/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err180];
        } else {
          vErrors.push(err180);
        }
        errors++;
      }
      if (data.up !== void 0) {
        const err181 = { instancePath: instancePath + "/up", schemaPath: "#/allOf/28/then/properties/up/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err181];
        } else {
          vErrors.push(err181);
        }
        errors++;
      }
    }
    var _valid28 = _errs218 === errors;
    valid119 = _valid28;
    if (valid119) {
      var props28 = {};
      props28.down = true;
      props28.up = true;
      props28.kind = true;
    }
  }
  if (!valid119) {
    const err182 = { instancePath, schemaPath: "#/allOf/28/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err182];
    } else {
      vErrors.push(err182);
    }
    errors++;
  }
  if (props0 !== true && props28 !== void 0) {
    if (props28 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props28);
    }
  }
  const _errs220 = errors;
  let valid123 = true;
  const _errs221 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing29;
    if (data.kind === void 0 && (missing29 = "kind")) {
      const err183 = {};
      if (vErrors === null) {
        vErrors = [err183];
      } else {
        vErrors.push(err183);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data96 = data.kind;
        const _errs223 = errors;
        const _errs224 = errors;
        if (!(data96 === "switch" || data96 === "router" || data96 === "access-point" || data96 === "media-converter" || data96 === "server" || data96 === "display" || data96 === "computer" || data96 === "tuner" || data96 === "patch-panel" || data96 === "amplifier" || data96 === "attenuator" || data96 === "filter" || data96 === "equaliser" || data96 === "splitter" || data96 === "tap" || data96 === "combiner" || data96 === "diplexer" || data96 === "multiswitch" || data96 === "power-inserter" || data96 === "isolator" || data96 === "earth-block" || data96 === "ups")) {
          const err184 = {};
          if (vErrors === null) {
            vErrors = [err184];
          } else {
            vErrors.push(err184);
          }
          errors++;
        }
        var valid125 = _errs224 === errors;
        if (valid125) {
          const err185 = {};
          if (vErrors === null) {
            vErrors = [err185];
          } else {
            vErrors.push(err185);
          }
          errors++;
        } else {
          errors = _errs223;
          if (vErrors !== null) {
            if (_errs223) {
              vErrors.length = _errs223;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid29 = _errs221 === errors;
  errors = _errs220;
  if (vErrors !== null) {
    if (_errs220) {
      vErrors.length = _errs220;
    } else {
      vErrors = null;
    }
  }
  if (_valid29) {
    const _errs225 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.rack !== void 0) {
        const err186 = { instancePath: instancePath + "/rack", schemaPath: "#/allOf/29/then/properties/rack/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err186];
        } else {
          vErrors.push(err186);
        }
        errors++;
      }
      if (data.unit !== void 0) {
        const err187 = { instancePath: instancePath + "/unit", schemaPath: "#/allOf/29/then/properties/unit/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err187];
        } else {
          vErrors.push(err187);
        }
        errors++;
      }
      if (data.units !== void 0) {
        const err188 = { instancePath: instancePath + "/units", schemaPath: "#/allOf/29/then/properties/units/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err188];
        } else {
          vErrors.push(err188);
        }
        errors++;
      }
      if (data.side !== void 0) {
        const err189 = { instancePath: instancePath + "/side", schemaPath: "#/allOf/29/then/properties/side/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err189];
        } else {
          vErrors.push(err189);
        }
        errors++;
      }
      if (data.width !== void 0) {
        const err190 = { instancePath: instancePath + "/width", schemaPath: "#/allOf/29/then/properties/width/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err190];
        } else {
          vErrors.push(err190);
        }
        errors++;
      }
      if (data.depth !== void 0) {
        const err191 = { instancePath: instancePath + "/depth", schemaPath: "#/allOf/29/then/properties/depth/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err191];
        } else {
          vErrors.push(err191);
        }
        errors++;
      }
      if (data.weight !== void 0) {
        const err192 = { instancePath: instancePath + "/weight", schemaPath: "#/allOf/29/then/properties/weight/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err192];
        } else {
          vErrors.push(err192);
        }
        errors++;
      }
    }
    var _valid29 = _errs225 === errors;
    valid123 = _valid29;
    if (valid123) {
      var props29 = {};
      props29.rack = true;
      props29.unit = true;
      props29.units = true;
      props29.side = true;
      props29.width = true;
      props29.depth = true;
      props29.weight = true;
      props29.kind = true;
    }
  }
  if (!valid123) {
    const err193 = { instancePath, schemaPath: "#/allOf/29/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err193];
    } else {
      vErrors.push(err193);
    }
    errors++;
  }
  if (props0 !== true && props29 !== void 0) {
    if (props29 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props29);
    }
  }
  const _errs227 = errors;
  let valid127 = true;
  const _errs228 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing30;
    if (data.kind === void 0 && (missing30 = "kind")) {
      const err194 = {};
      if (vErrors === null) {
        vErrors = [err194];
      } else {
        vErrors.push(err194);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs230 = errors;
        const _errs231 = errors;
        if (!(data.kind === "patch-panel")) {
          const err195 = {};
          if (vErrors === null) {
            vErrors = [err195];
          } else {
            vErrors.push(err195);
          }
          errors++;
        }
        var valid129 = _errs231 === errors;
        if (valid129) {
          const err196 = {};
          if (vErrors === null) {
            vErrors = [err196];
          } else {
            vErrors.push(err196);
          }
          errors++;
        } else {
          errors = _errs230;
          if (vErrors !== null) {
            if (_errs230) {
              vErrors.length = _errs230;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid30 = _errs228 === errors;
  errors = _errs227;
  if (vErrors !== null) {
    if (_errs227) {
      vErrors.length = _errs227;
    } else {
      vErrors = null;
    }
  }
  if (_valid30) {
    const _errs232 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.rows !== void 0) {
        const err197 = { instancePath: instancePath + "/rows", schemaPath: "#/allOf/30/then/properties/rows/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err197];
        } else {
          vErrors.push(err197);
        }
        errors++;
      }
      if (data.order !== void 0) {
        const err198 = { instancePath: instancePath + "/order", schemaPath: "#/allOf/30/then/properties/order/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err198];
        } else {
          vErrors.push(err198);
        }
        errors++;
      }
    }
    var _valid30 = _errs232 === errors;
    valid127 = _valid30;
    if (valid127) {
      var props30 = {};
      props30.rows = true;
      props30.order = true;
      props30.kind = true;
    }
  }
  if (!valid127) {
    const err199 = { instancePath, schemaPath: "#/allOf/30/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err199];
    } else {
      vErrors.push(err199);
    }
    errors++;
  }
  if (props0 !== true && props30 !== void 0) {
    if (props30 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props30);
    }
  }
  const _errs234 = errors;
  let valid131 = true;
  const _errs235 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing31;
    if (data.kind === void 0 && (missing31 = "kind")) {
      const err200 = {};
      if (vErrors === null) {
        vErrors = [err200];
      } else {
        vErrors.push(err200);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data107 = data.kind;
        const _errs237 = errors;
        const _errs238 = errors;
        if (!(data107 === "switch" || data107 === "router" || data107 === "access-point" || data107 === "media-converter" || data107 === "server" || data107 === "camera" || data107 === "display" || data107 === "computer" || data107 === "tuner" || data107 === "internet")) {
          const err201 = {};
          if (vErrors === null) {
            vErrors = [err201];
          } else {
            vErrors.push(err201);
          }
          errors++;
        }
        var valid133 = _errs238 === errors;
        if (valid133) {
          const err202 = {};
          if (vErrors === null) {
            vErrors = [err202];
          } else {
            vErrors.push(err202);
          }
          errors++;
        } else {
          errors = _errs237;
          if (vErrors !== null) {
            if (_errs237) {
              vErrors.length = _errs237;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid31 = _errs235 === errors;
  errors = _errs234;
  if (vErrors !== null) {
    if (_errs234) {
      vErrors.length = _errs234;
    } else {
      vErrors = null;
    }
  }
  if (_valid31) {
    const _errs239 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.speed !== void 0) {
        const err203 = { instancePath: instancePath + "/speed", schemaPath: "#/allOf/31/then/properties/speed/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err203];
        } else {
          vErrors.push(err203);
        }
        errors++;
      }
      if (data.medium !== void 0) {
        const err204 = { instancePath: instancePath + "/medium", schemaPath: "#/allOf/31/then/properties/medium/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err204];
        } else {
          vErrors.push(err204);
        }
        errors++;
      }
      if (data.module !== void 0) {
        const err205 = { instancePath: instancePath + "/module", schemaPath: "#/allOf/31/then/properties/module/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err205];
        } else {
          vErrors.push(err205);
        }
        errors++;
      }
      if (data.ports !== void 0) {
        let data111 = data.ports;
        if (data111 && typeof data111 == "object" && !Array.isArray(data111)) {
          for (const key3 in data111) {
            let data112 = data111[key3];
            if (data112 && typeof data112 == "object" && !Array.isArray(data112)) {
              if (data112.speed !== void 0) {
                const err206 = { instancePath: instancePath + "/ports/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/speed", schemaPath: "#/allOf/31/then/properties/ports/additionalProperties/properties/speed/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err206];
                } else {
                  vErrors.push(err206);
                }
                errors++;
              }
              if (data112.medium !== void 0) {
                const err207 = { instancePath: instancePath + "/ports/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/medium", schemaPath: "#/allOf/31/then/properties/ports/additionalProperties/properties/medium/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err207];
                } else {
                  vErrors.push(err207);
                }
                errors++;
              }
              if (data112.module !== void 0) {
                const err208 = { instancePath: instancePath + "/ports/" + key3.replace(/~/g, "~0").replace(/\//g, "~1") + "/module", schemaPath: "#/allOf/31/then/properties/ports/additionalProperties/properties/module/false schema", keyword: "false schema", params: {} };
                if (vErrors === null) {
                  vErrors = [err208];
                } else {
                  vErrors.push(err208);
                }
                errors++;
              }
            } else {
              const err209 = { instancePath: instancePath + "/ports/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/allOf/31/then/properties/ports/additionalProperties/type", keyword: "type", params: { type: "object" } };
              if (vErrors === null) {
                vErrors = [err209];
              } else {
                vErrors.push(err209);
              }
              errors++;
            }
          }
        } else {
          const err210 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/31/then/properties/ports/type", keyword: "type", params: { type: "object" } };
          if (vErrors === null) {
            vErrors = [err210];
          } else {
            vErrors.push(err210);
          }
          errors++;
        }
      }
    }
    var _valid31 = _errs239 === errors;
    valid131 = _valid31;
    if (valid131) {
      var props31 = {};
      props31.speed = true;
      props31.medium = true;
      props31.module = true;
      props31.ports = true;
      props31.kind = true;
    }
  }
  if (!valid131) {
    const err211 = { instancePath, schemaPath: "#/allOf/31/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err211];
    } else {
      vErrors.push(err211);
    }
    errors++;
  }
  if (props0 !== true && props31 !== void 0) {
    if (props31 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props31);
    }
  }
  const _errs246 = errors;
  let valid137 = true;
  const _errs247 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing32;
    if (data.kind === void 0 && (missing32 = "kind")) {
      const err212 = {};
      if (vErrors === null) {
        vErrors = [err212];
      } else {
        vErrors.push(err212);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data116 = data.kind;
        const _errs249 = errors;
        const _errs250 = errors;
        if (!(data116 === "switch" || data116 === "router" || data116 === "access-point" || data116 === "media-converter" || data116 === "server" || data116 === "camera" || data116 === "display" || data116 === "computer" || data116 === "tuner" || data116 === "patch-panel" || data116 === "internet")) {
          const err213 = {};
          if (vErrors === null) {
            vErrors = [err213];
          } else {
            vErrors.push(err213);
          }
          errors++;
        }
        var valid139 = _errs250 === errors;
        if (valid139) {
          const err214 = {};
          if (vErrors === null) {
            vErrors = [err214];
          } else {
            vErrors.push(err214);
          }
          errors++;
        } else {
          errors = _errs249;
          if (vErrors !== null) {
            if (_errs249) {
              vErrors.length = _errs249;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid32 = _errs247 === errors;
  errors = _errs246;
  if (vErrors !== null) {
    if (_errs246) {
      vErrors.length = _errs246;
    } else {
      vErrors = null;
    }
  }
  if (_valid32) {
    const _errs251 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.ports !== void 0) {
        const err215 = { instancePath: instancePath + "/ports", schemaPath: "#/allOf/32/then/properties/ports/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err215];
        } else {
          vErrors.push(err215);
        }
        errors++;
      }
    }
    var _valid32 = _errs251 === errors;
    valid137 = _valid32;
    if (valid137) {
      var props32 = {};
      props32.ports = true;
      props32.kind = true;
    }
  }
  if (!valid137) {
    const err216 = { instancePath, schemaPath: "#/allOf/32/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err216];
    } else {
      vErrors.push(err216);
    }
    errors++;
  }
  if (props0 !== true && props32 !== void 0) {
    if (props32 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props32);
    }
  }
  const _errs253 = errors;
  let valid141 = true;
  const _errs254 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing33;
    if (data.kind === void 0 && (missing33 = "kind")) {
      const err217 = {};
      if (vErrors === null) {
        vErrors = [err217];
      } else {
        vErrors.push(err217);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        const _errs256 = errors;
        const _errs257 = errors;
        if (!(data.kind === "ups")) {
          const err218 = {};
          if (vErrors === null) {
            vErrors = [err218];
          } else {
            vErrors.push(err218);
          }
          errors++;
        }
        var valid143 = _errs257 === errors;
        if (valid143) {
          const err219 = {};
          if (vErrors === null) {
            vErrors = [err219];
          } else {
            vErrors.push(err219);
          }
          errors++;
        } else {
          errors = _errs256;
          if (vErrors !== null) {
            if (_errs256) {
              vErrors.length = _errs256;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid33 = _errs254 === errors;
  errors = _errs253;
  if (vErrors !== null) {
    if (_errs253) {
      vErrors.length = _errs253;
    } else {
      vErrors = null;
    }
  }
  if (_valid33) {
    const _errs258 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.rated !== void 0) {
        const err220 = { instancePath: instancePath + "/rated", schemaPath: "#/allOf/33/then/properties/rated/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err220];
        } else {
          vErrors.push(err220);
        }
        errors++;
      }
      if (data["rated-power"] !== void 0) {
        const err221 = { instancePath: instancePath + "/rated-power", schemaPath: "#/allOf/33/then/properties/rated-power/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err221];
        } else {
          vErrors.push(err221);
        }
        errors++;
      }
      if (data.battery !== void 0) {
        const err222 = { instancePath: instancePath + "/battery", schemaPath: "#/allOf/33/then/properties/battery/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err222];
        } else {
          vErrors.push(err222);
        }
        errors++;
      }
      if (data.chemistry !== void 0) {
        const err223 = { instancePath: instancePath + "/chemistry", schemaPath: "#/allOf/33/then/properties/chemistry/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err223];
        } else {
          vErrors.push(err223);
        }
        errors++;
      }
      if (data.efficiency !== void 0) {
        const err224 = { instancePath: instancePath + "/efficiency", schemaPath: "#/allOf/33/then/properties/efficiency/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err224];
        } else {
          vErrors.push(err224);
        }
        errors++;
      }
      if (data.health !== void 0) {
        const err225 = { instancePath: instancePath + "/health", schemaPath: "#/allOf/33/then/properties/health/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err225];
        } else {
          vErrors.push(err225);
        }
        errors++;
      }
      if (data["depth-of-discharge"] !== void 0) {
        const err226 = { instancePath: instancePath + "/depth-of-discharge", schemaPath: "#/allOf/33/then/properties/depth-of-discharge/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err226];
        } else {
          vErrors.push(err226);
        }
        errors++;
      }
    }
    var _valid33 = _errs258 === errors;
    valid141 = _valid33;
    if (valid141) {
      var props33 = {};
      props33.rated = true;
      props33["rated-power"] = true;
      props33.battery = true;
      props33.chemistry = true;
      props33.efficiency = true;
      props33.health = true;
      props33["depth-of-discharge"] = true;
      props33.kind = true;
    }
  }
  if (!valid141) {
    const err227 = { instancePath, schemaPath: "#/allOf/33/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err227];
    } else {
      vErrors.push(err227);
    }
    errors++;
  }
  if (props0 !== true && props33 !== void 0) {
    if (props33 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props33);
    }
  }
  const _errs260 = errors;
  let valid145 = true;
  const _errs261 = errors;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    let missing34;
    if (data.kind === void 0 && (missing34 = "kind")) {
      const err228 = {};
      if (vErrors === null) {
        vErrors = [err228];
      } else {
        vErrors.push(err228);
      }
      errors++;
    } else {
      if (data.kind !== void 0) {
        let data126 = data.kind;
        const _errs263 = errors;
        const _errs264 = errors;
        if (!(data126 === "switch" || data126 === "router" || data126 === "access-point" || data126 === "media-converter" || data126 === "server" || data126 === "camera" || data126 === "display" || data126 === "computer" || data126 === "tuner" || data126 === "internet" || data126 === "amplifier" || data126 === "multiswitch" || data126 === "power-inserter" || data126 === "ups" || data126 === "circuit")) {
          const err229 = {};
          if (vErrors === null) {
            vErrors = [err229];
          } else {
            vErrors.push(err229);
          }
          errors++;
        }
        var valid147 = _errs264 === errors;
        if (valid147) {
          const err230 = {};
          if (vErrors === null) {
            vErrors = [err230];
          } else {
            vErrors.push(err230);
          }
          errors++;
        } else {
          errors = _errs263;
          if (vErrors !== null) {
            if (_errs263) {
              vErrors.length = _errs263;
            } else {
              vErrors = null;
            }
          }
        }
      }
    }
  }
  var _valid34 = _errs261 === errors;
  errors = _errs260;
  if (vErrors !== null) {
    if (_errs260) {
      vErrors.length = _errs260;
    } else {
      vErrors = null;
    }
  }
  if (_valid34) {
    const _errs265 = errors;
    if (data && typeof data == "object" && !Array.isArray(data)) {
      if (data.power !== void 0) {
        const err231 = { instancePath: instancePath + "/power", schemaPath: "#/allOf/34/then/properties/power/false schema", keyword: "false schema", params: {} };
        if (vErrors === null) {
          vErrors = [err231];
        } else {
          vErrors.push(err231);
        }
        errors++;
      }
    }
    var _valid34 = _errs265 === errors;
    valid145 = _valid34;
    if (valid145) {
      var props34 = {};
      props34.power = true;
      props34.kind = true;
    }
  }
  if (!valid145) {
    const err232 = { instancePath, schemaPath: "#/allOf/34/if", keyword: "if", params: { failingKeyword: "then" } };
    if (vErrors === null) {
      vErrors = [err232];
    } else {
      vErrors.push(err232);
    }
    errors++;
  }
  if (props0 !== true && props34 !== void 0) {
    if (props34 === true) {
      props0 = true;
    } else {
      props0 = props0 || {};
      Object.assign(props0, props34);
    }
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err233 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" } };
      if (vErrors === null) {
        vErrors = [err233];
      } else {
        vErrors.push(err233);
      }
      errors++;
    }
    for (const key4 in data) {
      if (!func1.call(schema41.properties, key4)) {
        const err234 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 } };
        if (vErrors === null) {
          vErrors = [err234];
        } else {
          vErrors.push(err234);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data128 = data.kind;
      if (typeof data128 !== "string") {
        const err235 = { instancePath: instancePath + "/kind", schemaPath: "#/$defs/kind/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err235];
        } else {
          vErrors.push(err235);
        }
        errors++;
      }
      if (!(data128 === "switch" || data128 === "router" || data128 === "access-point" || data128 === "media-converter" || data128 === "server" || data128 === "camera" || data128 === "display" || data128 === "computer" || data128 === "tuner" || data128 === "patch-panel" || data128 === "internet" || data128 === "aerial" || data128 === "lnb" || data128 === "amplifier" || data128 === "attenuator" || data128 === "filter" || data128 === "equaliser" || data128 === "splitter" || data128 === "tap" || data128 === "combiner" || data128 === "diplexer" || data128 === "multiswitch" || data128 === "outlet" || data128 === "power-inserter" || data128 === "isolator" || data128 === "earth-block" || data128 === "ups" || data128 === "circuit")) {
        const err236 = { instancePath: instancePath + "/kind", schemaPath: "#/$defs/kind/enum", keyword: "enum", params: { allowedValues: schema42.enum } };
        if (vErrors === null) {
          vErrors = [err236];
        } else {
          vErrors.push(err236);
        }
        errors++;
      }
    }
    if (data["igmp-snooping"] !== void 0) {
      if (typeof data["igmp-snooping"] !== "boolean") {
        const err237 = { instancePath: instancePath + "/igmp-snooping", schemaPath: "#/properties/igmp-snooping/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err237];
        } else {
          vErrors.push(err237);
        }
        errors++;
      }
    }
    if (data["unregistered-multicast"] !== void 0) {
      let data130 = data["unregistered-multicast"];
      if (typeof data130 !== "string") {
        const err238 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/properties/unregistered-multicast/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err238];
        } else {
          vErrors.push(err238);
        }
        errors++;
      }
      if (!(data130 === "flood" || data130 === "drop")) {
        const err239 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/properties/unregistered-multicast/enum", keyword: "enum", params: { allowedValues: schema41.properties["unregistered-multicast"].enum } };
        if (vErrors === null) {
          vErrors = [err239];
        } else {
          vErrors.push(err239);
        }
        errors++;
      }
    }
    if (data["without-querier"] !== void 0) {
      let data131 = data["without-querier"];
      if (typeof data131 !== "string") {
        const err240 = { instancePath: instancePath + "/without-querier", schemaPath: "#/properties/without-querier/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err240];
        } else {
          vErrors.push(err240);
        }
        errors++;
      }
      if (!(data131 === "by-reports" || data131 === "flood")) {
        const err241 = { instancePath: instancePath + "/without-querier", schemaPath: "#/properties/without-querier/enum", keyword: "enum", params: { allowedValues: schema41.properties["without-querier"].enum } };
        if (vErrors === null) {
          vErrors = [err241];
        } else {
          vErrors.push(err241);
        }
        errors++;
      }
    }
    if (data["group-table"] !== void 0) {
      let data132 = data["group-table"];
      if (!(typeof data132 == "number" && (!(data132 % 1) && !isNaN(data132)) && isFinite(data132))) {
        const err242 = { instancePath: instancePath + "/group-table", schemaPath: "#/properties/group-table/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err242];
        } else {
          vErrors.push(err242);
        }
        errors++;
      }
      if (typeof data132 == "number" && isFinite(data132)) {
        if (data132 < 1 || isNaN(data132)) {
          const err243 = { instancePath: instancePath + "/group-table", schemaPath: "#/properties/group-table/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err243];
          } else {
            vErrors.push(err243);
          }
          errors++;
        }
      }
    }
    if (data["spanning-tree"] !== void 0) {
      if (typeof data["spanning-tree"] !== "boolean") {
        const err244 = { instancePath: instancePath + "/spanning-tree", schemaPath: "#/properties/spanning-tree/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err244];
        } else {
          vErrors.push(err244);
        }
        errors++;
      }
    }
    if (data["spanning-tree-priority"] !== void 0) {
      let data134 = data["spanning-tree-priority"];
      if (!(typeof data134 == "number" && (!(data134 % 1) && !isNaN(data134)) && isFinite(data134))) {
        const err245 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err245];
        } else {
          vErrors.push(err245);
        }
        errors++;
      }
      if (typeof data134 == "number" && isFinite(data134)) {
        if (data134 > 61440 || isNaN(data134)) {
          const err246 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/maximum", keyword: "maximum", params: { comparison: "<=", limit: 61440 } };
          if (vErrors === null) {
            vErrors = [err246];
          } else {
            vErrors.push(err246);
          }
          errors++;
        }
        if (data134 < 0 || isNaN(data134)) {
          const err247 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 } };
          if (vErrors === null) {
            vErrors = [err247];
          } else {
            vErrors.push(err247);
          }
          errors++;
        }
        let res0;
        if (res0 = data134 / 4096, res0 !== parseInt(res0)) {
          const err248 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/multipleOf", keyword: "multipleOf", params: { multipleOf: 4096 } };
          if (vErrors === null) {
            vErrors = [err248];
          } else {
            vErrors.push(err248);
          }
          errors++;
        }
      }
    }
    if (data["poe-budget"] !== void 0) {
      let data135 = data["poe-budget"];
      if (typeof data135 === "string") {
        if (!pattern13.test(data135)) {
          const err249 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" } };
          if (vErrors === null) {
            vErrors = [err249];
          } else {
            vErrors.push(err249);
          }
          errors++;
        }
      } else {
        const err250 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err250];
        } else {
          vErrors.push(err250);
        }
        errors++;
      }
    }
    if (data.routing !== void 0) {
      if (typeof data.routing !== "boolean") {
        const err251 = { instancePath: instancePath + "/routing", schemaPath: "#/properties/routing/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err251];
        } else {
          vErrors.push(err251);
        }
        errors++;
      }
    }
    if (data["multicast-routing"] !== void 0) {
      if (typeof data["multicast-routing"] !== "boolean") {
        const err252 = { instancePath: instancePath + "/multicast-routing", schemaPath: "#/properties/multicast-routing/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err252];
        } else {
          vErrors.push(err252);
        }
        errors++;
      }
    }
    if (data.ports !== void 0) {
      let data138 = data.ports;
      if (data138 && typeof data138 == "object" && !Array.isArray(data138)) {
        if (Object.keys(data138).length < 1) {
          const err253 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err253];
          } else {
            vErrors.push(err253);
          }
          errors++;
        }
        for (const key5 in data138) {
          const _errs291 = errors;
          if (typeof key5 === "string") {
            if (func2(key5) > 63) {
              const err254 = { instancePath: instancePath + "/ports", schemaPath: "#/$defs/name/maxLength", keyword: "maxLength", params: { limit: 63 }, propertyName: key5 };
              if (vErrors === null) {
                vErrors = [err254];
              } else {
                vErrors.push(err254);
              }
              errors++;
            }
            if (!pattern5.test(key5)) {
              const err255 = { instancePath: instancePath + "/ports", schemaPath: "#/$defs/name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" }, propertyName: key5 };
              if (vErrors === null) {
                vErrors = [err255];
              } else {
                vErrors.push(err255);
              }
              errors++;
            }
          } else {
            const err256 = { instancePath: instancePath + "/ports", schemaPath: "#/$defs/name/type", keyword: "type", params: { type: "string" }, propertyName: key5 };
            if (vErrors === null) {
              vErrors = [err256];
            } else {
              vErrors.push(err256);
            }
            errors++;
          }
          var valid152 = _errs291 === errors;
          if (!valid152) {
            const err257 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/propertyNames", keyword: "propertyNames", params: { propertyName: key5 } };
            if (vErrors === null) {
              vErrors = [err257];
            } else {
              vErrors.push(err257);
            }
            errors++;
          }
        }
        for (const key6 in data138) {
          if (!validate24(data138[key6], { instancePath: instancePath + "/ports/" + key6.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data138, parentDataProperty: key6, rootData, dynamicAnchors })) {
            if (vErrors === null) vErrors = validate24.errors;
            else for (const each of validate24.errors) vErrors.push(each);
            errors = vErrors.length;
          }
        }
      } else {
        const err258 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err258];
        } else {
          vErrors.push(err258);
        }
        errors++;
      }
    }
    if (data.address !== void 0) {
      let data140 = data.address;
      if (typeof data140 === "string") {
        if (!pattern19.test(data140)) {
          const err259 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" } };
          if (vErrors === null) {
            vErrors = [err259];
          } else {
            vErrors.push(err259);
          }
          errors++;
        }
      } else {
        const err260 = { instancePath: instancePath + "/address", schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err260];
        } else {
          vErrors.push(err260);
        }
        errors++;
      }
    }
    if (data.addresses !== void 0) {
      let data141 = data.addresses;
      if (data141 && typeof data141 == "object" && !Array.isArray(data141)) {
        if (Object.keys(data141).length < 1) {
          const err261 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err261];
          } else {
            vErrors.push(err261);
          }
          errors++;
        }
        for (const key7 in data141) {
          const _errs301 = errors;
          if (typeof key7 === "string") {
            if (!pattern7.test(key7)) {
              const err262 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, propertyName: key7 };
              if (vErrors === null) {
                vErrors = [err262];
              } else {
                vErrors.push(err262);
              }
              errors++;
            }
          } else {
            const err263 = { instancePath: instancePath + "/addresses", schemaPath: "#/$defs/vlan-name/type", keyword: "type", params: { type: "string" }, propertyName: key7 };
            if (vErrors === null) {
              vErrors = [err263];
            } else {
              vErrors.push(err263);
            }
            errors++;
          }
          var valid156 = _errs301 === errors;
          if (!valid156) {
            const err264 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/propertyNames", keyword: "propertyNames", params: { propertyName: key7 } };
            if (vErrors === null) {
              vErrors = [err264];
            } else {
              vErrors.push(err264);
            }
            errors++;
          }
        }
        for (const key8 in data141) {
          let data142 = data141[key8];
          if (typeof data142 === "string") {
            if (!pattern19.test(data142)) {
              const err265 = { instancePath: instancePath + "/addresses/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" } };
              if (vErrors === null) {
                vErrors = [err265];
              } else {
                vErrors.push(err265);
              }
              errors++;
            }
          } else {
            const err266 = { instancePath: instancePath + "/addresses/" + key8.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/own-address/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err266];
            } else {
              vErrors.push(err266);
            }
            errors++;
          }
        }
      } else {
        const err267 = { instancePath: instancePath + "/addresses", schemaPath: "#/properties/addresses/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err267];
        } else {
          vErrors.push(err267);
        }
        errors++;
      }
    }
    if (data.mac !== void 0) {
      let data143 = data.mac;
      if (typeof data143 === "string") {
        if (!pattern23.test(data143)) {
          const err268 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/pattern", keyword: "pattern", params: { pattern: "^([0-9A-Fa-f]{2}:){5}[0-9A-Fa-f]{2}$|^([0-9A-Fa-f]{2}-){5}[0-9A-Fa-f]{2}$" } };
          if (vErrors === null) {
            vErrors = [err268];
          } else {
            vErrors.push(err268);
          }
          errors++;
        }
      } else {
        const err269 = { instancePath: instancePath + "/mac", schemaPath: "#/$defs/mac/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err269];
        } else {
          vErrors.push(err269);
        }
        errors++;
      }
    }
    if (data.reserved !== void 0) {
      if (typeof data.reserved !== "boolean") {
        const err270 = { instancePath: instancePath + "/reserved", schemaPath: "#/properties/reserved/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err270];
        } else {
          vErrors.push(err270);
        }
        errors++;
      }
    }
    if (data.interface !== void 0) {
      let data145 = data.interface;
      if (typeof data145 === "string") {
        if (!pattern24.test(data145)) {
          const err271 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/pattern", keyword: "pattern", params: { pattern: "^[^\\s/:]{1,15}$" } };
          if (vErrors === null) {
            vErrors = [err271];
          } else {
            vErrors.push(err271);
          }
          errors++;
        }
      } else {
        const err272 = { instancePath: instancePath + "/interface", schemaPath: "#/properties/interface/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err272];
        } else {
          vErrors.push(err272);
        }
        errors++;
      }
    }
    if (data.speed !== void 0) {
      let data146 = data.speed;
      if (typeof data146 === "string") {
        if (!pattern15.test(data146)) {
          const err273 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err273];
          } else {
            vErrors.push(err273);
          }
          errors++;
        }
      } else {
        const err274 = { instancePath: instancePath + "/speed", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err274];
        } else {
          vErrors.push(err274);
        }
        errors++;
      }
    }
    if (data.medium !== void 0) {
      let data147 = data.medium;
      if (typeof data147 !== "string") {
        const err275 = { instancePath: instancePath + "/medium", schemaPath: "#/properties/medium/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err275];
        } else {
          vErrors.push(err275);
        }
        errors++;
      }
      if (!(data147 === "copper" || data147 === "multimode" || data147 === "single-mode" || data147 === "direct-attach")) {
        const err276 = { instancePath: instancePath + "/medium", schemaPath: "#/properties/medium/enum", keyword: "enum", params: { allowedValues: schema41.properties.medium.enum } };
        if (vErrors === null) {
          vErrors = [err276];
        } else {
          vErrors.push(err276);
        }
        errors++;
      }
    }
    if (data.module !== void 0) {
      let data148 = data.module;
      if (typeof data148 !== "string") {
        const err277 = { instancePath: instancePath + "/module", schemaPath: "#/properties/module/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err277];
        } else {
          vErrors.push(err277);
        }
        errors++;
      }
      if (!(data148 === "100base-fx" || data148 === "100base-lx10" || data148 === "100base-bx10-d" || data148 === "100base-bx10-u" || data148 === "1000base-t" || data148 === "1000base-sx" || data148 === "1000base-lx" || data148 === "1000base-lx10" || data148 === "1000base-bx10-d" || data148 === "1000base-bx10-u" || data148 === "2.5gbase-t" || data148 === "10gbase-t" || data148 === "10gbase-sr" || data148 === "10gbase-lrm" || data148 === "10gbase-lr" || data148 === "10gbase-er" || data148 === "10gbase-br10-d" || data148 === "10gbase-br10-u" || data148 === "25gbase-sr" || data148 === "25gbase-lr" || data148 === "40gbase-sr4" || data148 === "40gbase-lr4")) {
        const err278 = { instancePath: instancePath + "/module", schemaPath: "#/properties/module/enum", keyword: "enum", params: { allowedValues: schema41.properties.module.enum } };
        if (vErrors === null) {
          vErrors = [err278];
        } else {
          vErrors.push(err278);
        }
        errors++;
      }
    }
    if (data.poe !== void 0) {
      if (!validate25(data.poe, { instancePath: instancePath + "/poe", parentData: data, parentDataProperty: "poe", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate25.errors;
        else for (const each of validate25.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data.down !== void 0) {
      let data150 = data.down;
      if (typeof data150 === "string") {
        if (!pattern15.test(data150)) {
          const err279 = { instancePath: instancePath + "/down", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err279];
          } else {
            vErrors.push(err279);
          }
          errors++;
        }
      } else {
        const err280 = { instancePath: instancePath + "/down", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err280];
        } else {
          vErrors.push(err280);
        }
        errors++;
      }
    }
    if (data.up !== void 0) {
      let data151 = data.up;
      if (typeof data151 === "string") {
        if (!pattern15.test(data151)) {
          const err281 = { instancePath: instancePath + "/up", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err281];
          } else {
            vErrors.push(err281);
          }
          errors++;
        }
      } else {
        const err282 = { instancePath: instancePath + "/up", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err282];
        } else {
          vErrors.push(err282);
        }
        errors++;
      }
    }
    if (data["basic-rate"] !== void 0) {
      let data152 = data["basic-rate"];
      if (typeof data152 === "string") {
        if (!pattern15.test(data152)) {
          const err283 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err283];
          } else {
            vErrors.push(err283);
          }
          errors++;
        }
      } else {
        const err284 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err284];
        } else {
          vErrors.push(err284);
        }
        errors++;
      }
      if (!(data152 === "1 Mb/s" || data152 === "2 Mb/s" || data152 === "5.5 Mb/s" || data152 === "6 Mb/s" || data152 === "9 Mb/s" || data152 === "11 Mb/s" || data152 === "12 Mb/s" || data152 === "18 Mb/s" || data152 === "24 Mb/s" || data152 === "36 Mb/s" || data152 === "48 Mb/s" || data152 === "54 Mb/s")) {
        const err285 = { instancePath: instancePath + "/basic-rate", schemaPath: "#/properties/basic-rate/enum", keyword: "enum", params: { allowedValues: schema41.properties["basic-rate"].enum } };
        if (vErrors === null) {
          vErrors = [err285];
        } else {
          vErrors.push(err285);
        }
        errors++;
      }
    }
    if (data["multicast-to-unicast"] !== void 0) {
      if (typeof data["multicast-to-unicast"] !== "boolean") {
        const err286 = { instancePath: instancePath + "/multicast-to-unicast", schemaPath: "#/properties/multicast-to-unicast/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err286];
        } else {
          vErrors.push(err286);
        }
        errors++;
      }
    }
    if (data.sessions !== void 0) {
      let data154 = data.sessions;
      if (!(typeof data154 == "number" && (!(data154 % 1) && !isNaN(data154)) && isFinite(data154))) {
        const err287 = { instancePath: instancePath + "/sessions", schemaPath: "#/properties/sessions/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err287];
        } else {
          vErrors.push(err287);
        }
        errors++;
      }
      if (typeof data154 == "number" && isFinite(data154)) {
        if (data154 < 1 || isNaN(data154)) {
          const err288 = { instancePath: instancePath + "/sessions", schemaPath: "#/properties/sessions/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err288];
          } else {
            vErrors.push(err288);
          }
          errors++;
        }
      }
    }
    if (data.decoders !== void 0) {
      let data155 = data.decoders;
      if (!(typeof data155 == "number" && (!(data155 % 1) && !isNaN(data155)) && isFinite(data155))) {
        const err289 = { instancePath: instancePath + "/decoders", schemaPath: "#/properties/decoders/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err289];
        } else {
          vErrors.push(err289);
        }
        errors++;
      }
      if (typeof data155 == "number" && isFinite(data155)) {
        if (data155 < 1 || isNaN(data155)) {
          const err290 = { instancePath: instancePath + "/decoders", schemaPath: "#/properties/decoders/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err290];
          } else {
            vErrors.push(err290);
          }
          errors++;
        }
      }
    }
    if (data.decodes !== void 0) {
      if (!validate29(data.decodes, { instancePath: instancePath + "/decodes", parentData: data, parentDataProperty: "decodes", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate29.errors;
        else for (const each of validate29.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data.routes !== void 0) {
      let data157 = data.routes;
      if (Array.isArray(data157)) {
        const len0 = data157.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (!validate31(data157[i0], { instancePath: instancePath + "/routes/" + i0, parentData: data157, parentDataProperty: i0, rootData, dynamicAnchors })) {
            if (vErrors === null) vErrors = validate31.errors;
            else for (const each of validate31.errors) vErrors.push(each);
            errors = vErrors.length;
          }
        }
      } else {
        const err291 = { instancePath: instancePath + "/routes", schemaPath: "#/properties/routes/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err291];
        } else {
          vErrors.push(err291);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err292 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err292];
        } else {
          vErrors.push(err292);
        }
        errors++;
      }
    }
    if (data.model !== void 0) {
      if (typeof data.model !== "string") {
        const err293 = { instancePath: instancePath + "/model", schemaPath: "#/properties/model/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err293];
        } else {
          vErrors.push(err293);
        }
        errors++;
      }
    }
    if (data.location !== void 0) {
      if (typeof data.location !== "string") {
        const err294 = { instancePath: instancePath + "/location", schemaPath: "#/properties/location/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err294];
        } else {
          vErrors.push(err294);
        }
        errors++;
      }
    }
    if (data.frequencies !== void 0) {
      let data162 = data.frequencies;
      if (typeof data162 === "string") {
        if (!pattern40.test(data162)) {
          const err295 = { instancePath: instancePath + "/frequencies", schemaPath: "#/$defs/frequency-range/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)?-[0-9]+(\\.[0-9]+)? (MHz|GHz)$" } };
          if (vErrors === null) {
            vErrors = [err295];
          } else {
            vErrors.push(err295);
          }
          errors++;
        }
      } else {
        const err296 = { instancePath: instancePath + "/frequencies", schemaPath: "#/$defs/frequency-range/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err296];
        } else {
          vErrors.push(err296);
        }
        errors++;
      }
    }
    if (data.passes !== void 0) {
      let data163 = data.passes;
      if (typeof data163 === "string") {
        if (!pattern40.test(data163)) {
          const err297 = { instancePath: instancePath + "/passes", schemaPath: "#/$defs/frequency-range/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)?-[0-9]+(\\.[0-9]+)? (MHz|GHz)$" } };
          if (vErrors === null) {
            vErrors = [err297];
          } else {
            vErrors.push(err297);
          }
          errors++;
        }
      } else {
        const err298 = { instancePath: instancePath + "/passes", schemaPath: "#/$defs/frequency-range/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err298];
        } else {
          vErrors.push(err298);
        }
        errors++;
      }
    }
    if (data.receives !== void 0) {
      let data164 = data.receives;
      if (data164 && typeof data164 == "object" && !Array.isArray(data164)) {
        if (Object.keys(data164).length < 1) {
          const err299 = { instancePath: instancePath + "/receives", schemaPath: "#/properties/receives/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err299];
          } else {
            vErrors.push(err299);
          }
          errors++;
        }
        for (const key9 in data164) {
          const _errs356 = errors;
          if (typeof key9 === "string") {
            if (!pattern7.test(key9)) {
              const err300 = { instancePath: instancePath + "/receives", schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, propertyName: key9 };
              if (vErrors === null) {
                vErrors = [err300];
              } else {
                vErrors.push(err300);
              }
              errors++;
            }
          } else {
            const err301 = { instancePath: instancePath + "/receives", schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" }, propertyName: key9 };
            if (vErrors === null) {
              vErrors = [err301];
            } else {
              vErrors.push(err301);
            }
            errors++;
          }
          var valid169 = _errs356 === errors;
          if (!valid169) {
            const err302 = { instancePath: instancePath + "/receives", schemaPath: "#/properties/receives/propertyNames", keyword: "propertyNames", params: { propertyName: key9 } };
            if (vErrors === null) {
              vErrors = [err302];
            } else {
              vErrors.push(err302);
            }
            errors++;
          }
        }
        for (const key10 in data164) {
          let data165 = data164[key10];
          if (typeof data165 === "string") {
            if (!pattern43.test(data165)) {
              const err303 = { instancePath: instancePath + "/receives/" + key10.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/level/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$" } };
              if (vErrors === null) {
                vErrors = [err303];
              } else {
                vErrors.push(err303);
              }
              errors++;
            }
          } else {
            const err304 = { instancePath: instancePath + "/receives/" + key10.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/level/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err304];
            } else {
              vErrors.push(err304);
            }
            errors++;
          }
        }
      } else {
        const err305 = { instancePath: instancePath + "/receives", schemaPath: "#/properties/receives/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err305];
        } else {
          vErrors.push(err305);
        }
        errors++;
      }
    }
    if (data.field !== void 0) {
      let data166 = data.field;
      if (data166 && typeof data166 == "object" && !Array.isArray(data166)) {
        if (Object.keys(data166).length < 1) {
          const err306 = { instancePath: instancePath + "/field", schemaPath: "#/properties/field/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err306];
          } else {
            vErrors.push(err306);
          }
          errors++;
        }
        for (const key11 in data166) {
          const _errs365 = errors;
          if (typeof key11 === "string") {
            if (!pattern7.test(key11)) {
              const err307 = { instancePath: instancePath + "/field", schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, propertyName: key11 };
              if (vErrors === null) {
                vErrors = [err307];
              } else {
                vErrors.push(err307);
              }
              errors++;
            }
          } else {
            const err308 = { instancePath: instancePath + "/field", schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" }, propertyName: key11 };
            if (vErrors === null) {
              vErrors = [err308];
            } else {
              vErrors.push(err308);
            }
            errors++;
          }
          var valid173 = _errs365 === errors;
          if (!valid173) {
            const err309 = { instancePath: instancePath + "/field", schemaPath: "#/properties/field/propertyNames", keyword: "propertyNames", params: { propertyName: key11 } };
            if (vErrors === null) {
              vErrors = [err309];
            } else {
              vErrors.push(err309);
            }
            errors++;
          }
        }
        for (const key12 in data166) {
          let data167 = data166[key12];
          if (typeof data167 === "string") {
            if (!pattern43.test(data167)) {
              const err310 = { instancePath: instancePath + "/field/" + key12.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/level/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$" } };
              if (vErrors === null) {
                vErrors = [err310];
              } else {
                vErrors.push(err310);
              }
              errors++;
            }
          } else {
            const err311 = { instancePath: instancePath + "/field/" + key12.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/level/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err311];
            } else {
              vErrors.push(err311);
            }
            errors++;
          }
        }
      } else {
        const err312 = { instancePath: instancePath + "/field", schemaPath: "#/properties/field/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err312];
        } else {
          vErrors.push(err312);
        }
        errors++;
      }
    }
    if (data.quality !== void 0) {
      let data168 = data.quality;
      if (data168 && typeof data168 == "object" && !Array.isArray(data168)) {
        if (Object.keys(data168).length < 1) {
          const err313 = { instancePath: instancePath + "/quality", schemaPath: "#/properties/quality/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err313];
          } else {
            vErrors.push(err313);
          }
          errors++;
        }
        for (const key13 in data168) {
          const _errs374 = errors;
          if (typeof key13 === "string") {
            if (!pattern7.test(key13)) {
              const err314 = { instancePath: instancePath + "/quality", schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, propertyName: key13 };
              if (vErrors === null) {
                vErrors = [err314];
              } else {
                vErrors.push(err314);
              }
              errors++;
            }
          } else {
            const err315 = { instancePath: instancePath + "/quality", schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" }, propertyName: key13 };
            if (vErrors === null) {
              vErrors = [err315];
            } else {
              vErrors.push(err315);
            }
            errors++;
          }
          var valid177 = _errs374 === errors;
          if (!valid177) {
            const err316 = { instancePath: instancePath + "/quality", schemaPath: "#/properties/quality/propertyNames", keyword: "propertyNames", params: { propertyName: key13 } };
            if (vErrors === null) {
              vErrors = [err316];
            } else {
              vErrors.push(err316);
            }
            errors++;
          }
        }
        for (const key14 in data168) {
          let data169 = data168[key14];
          if (typeof data169 === "string") {
            if (!pattern47.test(data169)) {
              const err317 = { instancePath: instancePath + "/quality/" + key14.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
              if (vErrors === null) {
                vErrors = [err317];
              } else {
                vErrors.push(err317);
              }
              errors++;
            }
          } else {
            const err318 = { instancePath: instancePath + "/quality/" + key14.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err318];
            } else {
              vErrors.push(err318);
            }
            errors++;
          }
        }
      } else {
        const err319 = { instancePath: instancePath + "/quality", schemaPath: "#/properties/quality/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err319];
        } else {
          vErrors.push(err319);
        }
        errors++;
      }
    }
    if (data.gain !== void 0) {
      let data170 = data.gain;
      if (typeof data170 === "string") {
        if (!pattern47.test(data170)) {
          const err320 = { instancePath: instancePath + "/gain", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
          if (vErrors === null) {
            vErrors = [err320];
          } else {
            vErrors.push(err320);
          }
          errors++;
        }
      } else {
        const err321 = { instancePath: instancePath + "/gain", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err321];
        } else {
          vErrors.push(err321);
        }
        errors++;
      }
    }
    if (data["noise-figure"] !== void 0) {
      let data171 = data["noise-figure"];
      if (typeof data171 === "string") {
        if (!pattern47.test(data171)) {
          const err322 = { instancePath: instancePath + "/noise-figure", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
          if (vErrors === null) {
            vErrors = [err322];
          } else {
            vErrors.push(err322);
          }
          errors++;
        }
      } else {
        const err323 = { instancePath: instancePath + "/noise-figure", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err323];
        } else {
          vErrors.push(err323);
        }
        errors++;
      }
    }
    if (data["max-output"] !== void 0) {
      let data172 = data["max-output"];
      if (typeof data172 === "string") {
        if (!pattern43.test(data172)) {
          const err324 = { instancePath: instancePath + "/max-output", schemaPath: "#/$defs/level/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$" } };
          if (vErrors === null) {
            vErrors = [err324];
          } else {
            vErrors.push(err324);
          }
          errors++;
        }
      } else {
        const err325 = { instancePath: instancePath + "/max-output", schemaPath: "#/$defs/level/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err325];
        } else {
          vErrors.push(err325);
        }
        errors++;
      }
    }
    if (data["powered-by"] !== void 0) {
      let data173 = data["powered-by"];
      if (typeof data173 !== "string") {
        const err326 = { instancePath: instancePath + "/powered-by", schemaPath: "#/properties/powered-by/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err326];
        } else {
          vErrors.push(err326);
        }
        errors++;
      }
      if (!(data173 === "in" || data173 === "out")) {
        const err327 = { instancePath: instancePath + "/powered-by", schemaPath: "#/properties/powered-by/enum", keyword: "enum", params: { allowedValues: schema41.properties["powered-by"].enum } };
        if (vErrors === null) {
          vErrors = [err327];
        } else {
          vErrors.push(err327);
        }
        errors++;
      }
    }
    if (data.supply !== void 0) {
      let data174 = data.supply;
      if (typeof data174 === "string") {
        if (!pattern51.test(data174)) {
          const err328 = { instancePath: instancePath + "/supply", schemaPath: "#/$defs/voltage/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? V$" } };
          if (vErrors === null) {
            vErrors = [err328];
          } else {
            vErrors.push(err328);
          }
          errors++;
        }
      } else {
        const err329 = { instancePath: instancePath + "/supply", schemaPath: "#/$defs/voltage/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err329];
        } else {
          vErrors.push(err329);
        }
        errors++;
      }
    }
    if (data.current !== void 0) {
      let data175 = data.current;
      if (typeof data175 === "string") {
        if (!pattern52.test(data175)) {
          const err330 = { instancePath: instancePath + "/current", schemaPath: "#/$defs/current/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (mA|A)$" } };
          if (vErrors === null) {
            vErrors = [err330];
          } else {
            vErrors.push(err330);
          }
          errors++;
        }
      } else {
        const err331 = { instancePath: instancePath + "/current", schemaPath: "#/$defs/current/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err331];
        } else {
          vErrors.push(err331);
        }
        errors++;
      }
    }
    if (data.loss !== void 0) {
      if (!validate33(data.loss, { instancePath: instancePath + "/loss", parentData: data, parentDataProperty: "loss", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate33.errors;
        else for (const each of validate33.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data["tap-loss"] !== void 0) {
      if (!validate33(data["tap-loss"], { instancePath: instancePath + "/tap-loss", parentData: data, parentDataProperty: "tap-loss", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate33.errors;
        else for (const each of validate33.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data.slope !== void 0) {
      let data178 = data.slope;
      if (typeof data178 === "string") {
        if (!pattern47.test(data178)) {
          const err332 = { instancePath: instancePath + "/slope", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
          if (vErrors === null) {
            vErrors = [err332];
          } else {
            vErrors.push(err332);
          }
          errors++;
        }
      } else {
        const err333 = { instancePath: instancePath + "/slope", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err333];
        } else {
          vErrors.push(err333);
        }
        errors++;
      }
    }
    if (data.ways !== void 0) {
      let data179 = data.ways;
      if (!(typeof data179 == "number" && (!(data179 % 1) && !isNaN(data179)) && isFinite(data179))) {
        const err334 = { instancePath: instancePath + "/ways", schemaPath: "#/properties/ways/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err334];
        } else {
          vErrors.push(err334);
        }
        errors++;
      }
      if (typeof data179 == "number" && isFinite(data179)) {
        if (data179 > 64 || isNaN(data179)) {
          const err335 = { instancePath: instancePath + "/ways", schemaPath: "#/properties/ways/maximum", keyword: "maximum", params: { comparison: "<=", limit: 64 } };
          if (vErrors === null) {
            vErrors = [err335];
          } else {
            vErrors.push(err335);
          }
          errors++;
        }
        if (data179 < 1 || isNaN(data179)) {
          const err336 = { instancePath: instancePath + "/ways", schemaPath: "#/properties/ways/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err336];
          } else {
            vErrors.push(err336);
          }
          errors++;
        }
      }
    }
    if (data.terminated !== void 0) {
      let data180 = data.terminated;
      if (Array.isArray(data180)) {
        const len1 = data180.length;
        for (let i1 = 0; i1 < len1; i1++) {
          let data181 = data180[i1];
          if (typeof data181 !== "string") {
            const err337 = { instancePath: instancePath + "/terminated/" + i1, schemaPath: "#/properties/terminated/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err337];
            } else {
              vErrors.push(err337);
            }
            errors++;
          }
          if (typeof data181 === "string") {
            if (!pattern7.test(data181)) {
              const err338 = { instancePath: instancePath + "/terminated/" + i1, schemaPath: "#/$defs/connector-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err338];
              } else {
                vErrors.push(err338);
              }
              errors++;
            }
          } else {
            const err339 = { instancePath: instancePath + "/terminated/" + i1, schemaPath: "#/$defs/connector-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err339];
            } else {
              vErrors.push(err339);
            }
            errors++;
          }
        }
        let i2 = data180.length;
        let j0;
        if (i2 > 1) {
          const indices0 = {};
          for (; i2--; ) {
            let item0 = data180[i2];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err340 = { instancePath: instancePath + "/terminated", schemaPath: "#/properties/terminated/uniqueItems", keyword: "uniqueItems", params: { i: i2, j: j0 } };
              if (vErrors === null) {
                vErrors = [err340];
              } else {
                vErrors.push(err340);
              }
              errors++;
              break;
            }
            indices0[item0] = i2;
          }
        }
      } else {
        const err341 = { instancePath: instancePath + "/terminated", schemaPath: "#/properties/terminated/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err341];
        } else {
          vErrors.push(err341);
        }
        errors++;
      }
    }
    if (data.isolation !== void 0) {
      let data182 = data.isolation;
      if (typeof data182 === "string") {
        if (!pattern47.test(data182)) {
          const err342 = { instancePath: instancePath + "/isolation", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
          if (vErrors === null) {
            vErrors = [err342];
          } else {
            vErrors.push(err342);
          }
          errors++;
        }
      } else {
        const err343 = { instancePath: instancePath + "/isolation", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err343];
        } else {
          vErrors.push(err343);
        }
        errors++;
      }
    }
    if (data["power-pass"] !== void 0) {
      let data183 = data["power-pass"];
      if (!Array.isArray(data183) && typeof data183 !== "boolean") {
        const err344 = { instancePath: instancePath + "/power-pass", schemaPath: "#/properties/power-pass/type", keyword: "type", params: { type: schema41.properties["power-pass"].type } };
        if (vErrors === null) {
          vErrors = [err344];
        } else {
          vErrors.push(err344);
        }
        errors++;
      }
      if (Array.isArray(data183)) {
        const len2 = data183.length;
        for (let i3 = 0; i3 < len2; i3++) {
          let data184 = data183[i3];
          if (typeof data184 !== "string") {
            const err345 = { instancePath: instancePath + "/power-pass/" + i3, schemaPath: "#/properties/power-pass/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err345];
            } else {
              vErrors.push(err345);
            }
            errors++;
          }
          if (typeof data184 === "string") {
            if (!pattern7.test(data184)) {
              const err346 = { instancePath: instancePath + "/power-pass/" + i3, schemaPath: "#/$defs/connector-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err346];
              } else {
                vErrors.push(err346);
              }
              errors++;
            }
          } else {
            const err347 = { instancePath: instancePath + "/power-pass/" + i3, schemaPath: "#/$defs/connector-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err347];
            } else {
              vErrors.push(err347);
            }
            errors++;
          }
        }
        let i4 = data183.length;
        let j1;
        if (i4 > 1) {
          const indices1 = {};
          for (; i4--; ) {
            let item1 = data183[i4];
            if (typeof item1 !== "string") {
              continue;
            }
            if (typeof indices1[item1] == "number") {
              j1 = indices1[item1];
              const err348 = { instancePath: instancePath + "/power-pass", schemaPath: "#/properties/power-pass/uniqueItems", keyword: "uniqueItems", params: { i: i4, j: j1 } };
              if (vErrors === null) {
                vErrors = [err348];
              } else {
                vErrors.push(err348);
              }
              errors++;
              break;
            }
            indices1[item1] = i4;
          }
        }
      }
    }
    if (data.mast !== void 0) {
      let data185 = data.mast;
      if (data185 && typeof data185 == "object" && !Array.isArray(data185)) {
        for (const key15 in data185) {
          if (!(key15 === "outside-protected-zone" || key15 === "earthed")) {
            const err349 = { instancePath: instancePath + "/mast", schemaPath: "#/properties/mast/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key15 } };
            if (vErrors === null) {
              vErrors = [err349];
            } else {
              vErrors.push(err349);
            }
            errors++;
          }
        }
        if (data185["outside-protected-zone"] !== void 0) {
          if (typeof data185["outside-protected-zone"] !== "boolean") {
            const err350 = { instancePath: instancePath + "/mast/outside-protected-zone", schemaPath: "#/properties/mast/properties/outside-protected-zone/type", keyword: "type", params: { type: "boolean" } };
            if (vErrors === null) {
              vErrors = [err350];
            } else {
              vErrors.push(err350);
            }
            errors++;
          }
        }
        if (data185.earthed !== void 0) {
          let data187 = data185.earthed;
          if (typeof data187 === "string") {
            if (!pattern60.test(data187)) {
              const err351 = { instancePath: instancePath + "/mast/earthed", schemaPath: "#/$defs/cross-section/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? mm\xB2$" } };
              if (vErrors === null) {
                vErrors = [err351];
              } else {
                vErrors.push(err351);
              }
              errors++;
            }
          } else {
            const err352 = { instancePath: instancePath + "/mast/earthed", schemaPath: "#/$defs/cross-section/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err352];
            } else {
              vErrors.push(err352);
            }
            errors++;
          }
        }
      } else {
        const err353 = { instancePath: instancePath + "/mast", schemaPath: "#/properties/mast/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err353];
        } else {
          vErrors.push(err353);
        }
        errors++;
      }
    }
    if (data.type !== void 0) {
      let data188 = data.type;
      if (typeof data188 !== "string") {
        const err354 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err354];
        } else {
          vErrors.push(err354);
        }
        errors++;
      }
      if (!(data188 === "single" || data188 === "twin" || data188 === "quad" || data188 === "quattro")) {
        const err355 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/enum", keyword: "enum", params: { allowedValues: schema41.properties.type.enum } };
        if (vErrors === null) {
          vErrors = [err355];
        } else {
          vErrors.push(err355);
        }
        errors++;
      }
    }
    if (data.inputs !== void 0) {
      let data189 = data.inputs;
      if (data189 && typeof data189 == "object" && !Array.isArray(data189)) {
        if (Object.keys(data189).length < 1) {
          const err356 = { instancePath: instancePath + "/inputs", schemaPath: "#/properties/inputs/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err356];
          } else {
            vErrors.push(err356);
          }
          errors++;
        }
        for (const key16 in data189) {
          const _errs432 = errors;
          if (typeof key16 === "string") {
            if (func2(key16) > 63) {
              const err357 = { instancePath: instancePath + "/inputs", schemaPath: "#/$defs/name/maxLength", keyword: "maxLength", params: { limit: 63 }, propertyName: key16 };
              if (vErrors === null) {
                vErrors = [err357];
              } else {
                vErrors.push(err357);
              }
              errors++;
            }
            if (!pattern5.test(key16)) {
              const err358 = { instancePath: instancePath + "/inputs", schemaPath: "#/$defs/name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" }, propertyName: key16 };
              if (vErrors === null) {
                vErrors = [err358];
              } else {
                vErrors.push(err358);
              }
              errors++;
            }
          } else {
            const err359 = { instancePath: instancePath + "/inputs", schemaPath: "#/$defs/name/type", keyword: "type", params: { type: "string" }, propertyName: key16 };
            if (vErrors === null) {
              vErrors = [err359];
            } else {
              vErrors.push(err359);
            }
            errors++;
          }
          var valid198 = _errs432 === errors;
          if (!valid198) {
            const err360 = { instancePath: instancePath + "/inputs", schemaPath: "#/properties/inputs/propertyNames", keyword: "propertyNames", params: { propertyName: key16 } };
            if (vErrors === null) {
              vErrors = [err360];
            } else {
              vErrors.push(err360);
            }
            errors++;
          }
        }
        for (const key17 in data189) {
          if (!validate36(data189[key17], { instancePath: instancePath + "/inputs/" + key17.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data189, parentDataProperty: key17, rootData, dynamicAnchors })) {
            if (vErrors === null) vErrors = validate36.errors;
            else for (const each of validate36.errors) vErrors.push(each);
            errors = vErrors.length;
          }
        }
      } else {
        const err361 = { instancePath: instancePath + "/inputs", schemaPath: "#/properties/inputs/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err361];
        } else {
          vErrors.push(err361);
        }
        errors++;
      }
    }
    if (data.tuners !== void 0) {
      let data191 = data.tuners;
      if (data191 && typeof data191 == "object" && !Array.isArray(data191)) {
        if (Object.keys(data191).length < 1) {
          const err362 = { instancePath: instancePath + "/tuners", schemaPath: "#/properties/tuners/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err362];
          } else {
            vErrors.push(err362);
          }
          errors++;
        }
        for (const key18 in data191) {
          const _errs439 = errors;
          if (typeof key18 === "string") {
            if (func2(key18) > 63) {
              const err363 = { instancePath: instancePath + "/tuners", schemaPath: "#/$defs/name/maxLength", keyword: "maxLength", params: { limit: 63 }, propertyName: key18 };
              if (vErrors === null) {
                vErrors = [err363];
              } else {
                vErrors.push(err363);
              }
              errors++;
            }
            if (!pattern5.test(key18)) {
              const err364 = { instancePath: instancePath + "/tuners", schemaPath: "#/$defs/name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" }, propertyName: key18 };
              if (vErrors === null) {
                vErrors = [err364];
              } else {
                vErrors.push(err364);
              }
              errors++;
            }
          } else {
            const err365 = { instancePath: instancePath + "/tuners", schemaPath: "#/$defs/name/type", keyword: "type", params: { type: "string" }, propertyName: key18 };
            if (vErrors === null) {
              vErrors = [err365];
            } else {
              vErrors.push(err365);
            }
            errors++;
          }
          var valid201 = _errs439 === errors;
          if (!valid201) {
            const err366 = { instancePath: instancePath + "/tuners", schemaPath: "#/properties/tuners/propertyNames", keyword: "propertyNames", params: { propertyName: key18 } };
            if (vErrors === null) {
              vErrors = [err366];
            } else {
              vErrors.push(err366);
            }
            errors++;
          }
        }
        for (const key19 in data191) {
          if (!validate38(data191[key19], { instancePath: instancePath + "/tuners/" + key19.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data191, parentDataProperty: key19, rootData, dynamicAnchors })) {
            if (vErrors === null) vErrors = validate38.errors;
            else for (const each of validate38.errors) vErrors.push(each);
            errors = vErrors.length;
          }
        }
      } else {
        const err367 = { instancePath: instancePath + "/tuners", schemaPath: "#/properties/tuners/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err367];
        } else {
          vErrors.push(err367);
        }
        errors++;
      }
    }
    if (data.host !== void 0) {
      let data193 = data.host;
      if (typeof data193 === "string") {
        if (!pattern7.test(data193)) {
          const err368 = { instancePath: instancePath + "/host", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err368];
          } else {
            vErrors.push(err368);
          }
          errors++;
        }
      } else {
        const err369 = { instancePath: instancePath + "/host", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err369];
        } else {
          vErrors.push(err369);
        }
        errors++;
      }
    }
    if (data.bus !== void 0) {
      let data194 = data.bus;
      if (typeof data194 === "string") {
        if (!pattern7.test(data194)) {
          const err370 = { instancePath: instancePath + "/bus", schemaPath: "#/properties/bus/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err370];
          } else {
            vErrors.push(err370);
          }
          errors++;
        }
      } else {
        const err371 = { instancePath: instancePath + "/bus", schemaPath: "#/properties/bus/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err371];
        } else {
          vErrors.push(err371);
        }
        errors++;
      }
    }
    if (data.buses !== void 0) {
      let data195 = data.buses;
      if (data195 && typeof data195 == "object" && !Array.isArray(data195)) {
        if (Object.keys(data195).length < 1) {
          const err372 = { instancePath: instancePath + "/buses", schemaPath: "#/properties/buses/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err372];
          } else {
            vErrors.push(err372);
          }
          errors++;
        }
        for (const key20 in data195) {
          const _errs451 = errors;
          if (typeof key20 === "string") {
            if (func2(key20) > 63) {
              const err373 = { instancePath: instancePath + "/buses", schemaPath: "#/$defs/name/maxLength", keyword: "maxLength", params: { limit: 63 }, propertyName: key20 };
              if (vErrors === null) {
                vErrors = [err373];
              } else {
                vErrors.push(err373);
              }
              errors++;
            }
            if (!pattern5.test(key20)) {
              const err374 = { instancePath: instancePath + "/buses", schemaPath: "#/$defs/name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" }, propertyName: key20 };
              if (vErrors === null) {
                vErrors = [err374];
              } else {
                vErrors.push(err374);
              }
              errors++;
            }
          } else {
            const err375 = { instancePath: instancePath + "/buses", schemaPath: "#/$defs/name/type", keyword: "type", params: { type: "string" }, propertyName: key20 };
            if (vErrors === null) {
              vErrors = [err375];
            } else {
              vErrors.push(err375);
            }
            errors++;
          }
          var valid205 = _errs451 === errors;
          if (!valid205) {
            const err376 = { instancePath: instancePath + "/buses", schemaPath: "#/properties/buses/propertyNames", keyword: "propertyNames", params: { propertyName: key20 } };
            if (vErrors === null) {
              vErrors = [err376];
            } else {
              vErrors.push(err376);
            }
            errors++;
          }
        }
        for (const key21 in data195) {
          let data196 = data195[key21];
          if (data196 && typeof data196 == "object" && !Array.isArray(data196)) {
            if (data196.kind === void 0) {
              const err377 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/buses/additionalProperties/required", keyword: "required", params: { missingProperty: "kind" } };
              if (vErrors === null) {
                vErrors = [err377];
              } else {
                vErrors.push(err377);
              }
              errors++;
            }
            for (const key22 in data196) {
              if (!(key22 === "kind" || key22 === "usable")) {
                const err378 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/buses/additionalProperties/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key22 } };
                if (vErrors === null) {
                  vErrors = [err378];
                } else {
                  vErrors.push(err378);
                }
                errors++;
              }
            }
            if (data196.kind !== void 0) {
              let data197 = data196.kind;
              if (typeof data197 !== "string") {
                const err379 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1") + "/kind", schemaPath: "#/properties/buses/additionalProperties/properties/kind/type", keyword: "type", params: { type: "string" } };
                if (vErrors === null) {
                  vErrors = [err379];
                } else {
                  vErrors.push(err379);
                }
                errors++;
              }
              if (!(data197 === "usb-2" || data197 === "usb-3")) {
                const err380 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1") + "/kind", schemaPath: "#/properties/buses/additionalProperties/properties/kind/enum", keyword: "enum", params: { allowedValues: schema41.properties.buses.additionalProperties.properties.kind.enum } };
                if (vErrors === null) {
                  vErrors = [err380];
                } else {
                  vErrors.push(err380);
                }
                errors++;
              }
            }
            if (data196.usable !== void 0) {
              let data198 = data196.usable;
              if (typeof data198 === "string") {
                if (!pattern15.test(data198)) {
                  const err381 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1") + "/usable", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
                  if (vErrors === null) {
                    vErrors = [err381];
                  } else {
                    vErrors.push(err381);
                  }
                  errors++;
                }
              } else {
                const err382 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1") + "/usable", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
                if (vErrors === null) {
                  vErrors = [err382];
                } else {
                  vErrors.push(err382);
                }
                errors++;
              }
            }
          } else {
            const err383 = { instancePath: instancePath + "/buses/" + key21.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/buses/additionalProperties/type", keyword: "type", params: { type: "object" } };
            if (vErrors === null) {
              vErrors = [err383];
            } else {
              vErrors.push(err383);
            }
            errors++;
          }
        }
      } else {
        const err384 = { instancePath: instancePath + "/buses", schemaPath: "#/properties/buses/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err384];
        } else {
          vErrors.push(err384);
        }
        errors++;
      }
    }
    if (data.building !== void 0) {
      let data199 = data.building;
      if (typeof data199 === "string") {
        if (func2(data199) < 1) {
          const err385 = { instancePath: instancePath + "/building", schemaPath: "#/properties/building/minLength", keyword: "minLength", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err385];
          } else {
            vErrors.push(err385);
          }
          errors++;
        }
      } else {
        const err386 = { instancePath: instancePath + "/building", schemaPath: "#/properties/building/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err386];
        } else {
          vErrors.push(err386);
        }
        errors++;
      }
    }
    if (data.power !== void 0) {
      if (!validate40(data.power, { instancePath: instancePath + "/power", parentData: data, parentDataProperty: "power", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate40.errors;
        else for (const each of validate40.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data.rated !== void 0) {
      let data201 = data.rated;
      if (typeof data201 === "string") {
        if (!pattern77.test(data201)) {
          const err387 = { instancePath: instancePath + "/rated", schemaPath: "#/$defs/apparent-power/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? VA$" } };
          if (vErrors === null) {
            vErrors = [err387];
          } else {
            vErrors.push(err387);
          }
          errors++;
        }
      } else {
        const err388 = { instancePath: instancePath + "/rated", schemaPath: "#/$defs/apparent-power/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err388];
        } else {
          vErrors.push(err388);
        }
        errors++;
      }
    }
    if (data["rated-power"] !== void 0) {
      let data202 = data["rated-power"];
      if (typeof data202 === "string") {
        if (!pattern13.test(data202)) {
          const err389 = { instancePath: instancePath + "/rated-power", schemaPath: "#/$defs/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" } };
          if (vErrors === null) {
            vErrors = [err389];
          } else {
            vErrors.push(err389);
          }
          errors++;
        }
      } else {
        const err390 = { instancePath: instancePath + "/rated-power", schemaPath: "#/$defs/power/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err390];
        } else {
          vErrors.push(err390);
        }
        errors++;
      }
    }
    if (data.battery !== void 0) {
      let data203 = data.battery;
      if (typeof data203 === "string") {
        if (!pattern79.test(data203)) {
          const err391 = { instancePath: instancePath + "/battery", schemaPath: "#/$defs/energy/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? Wh$" } };
          if (vErrors === null) {
            vErrors = [err391];
          } else {
            vErrors.push(err391);
          }
          errors++;
        }
      } else {
        const err392 = { instancePath: instancePath + "/battery", schemaPath: "#/$defs/energy/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err392];
        } else {
          vErrors.push(err392);
        }
        errors++;
      }
    }
    if (data.chemistry !== void 0) {
      let data204 = data.chemistry;
      if (typeof data204 !== "string") {
        const err393 = { instancePath: instancePath + "/chemistry", schemaPath: "#/properties/chemistry/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err393];
        } else {
          vErrors.push(err393);
        }
        errors++;
      }
      if (!(data204 === "lead-acid" || data204 === "lithium")) {
        const err394 = { instancePath: instancePath + "/chemistry", schemaPath: "#/properties/chemistry/enum", keyword: "enum", params: { allowedValues: schema41.properties.chemistry.enum } };
        if (vErrors === null) {
          vErrors = [err394];
        } else {
          vErrors.push(err394);
        }
        errors++;
      }
    }
    if (data.efficiency !== void 0) {
      let data205 = data.efficiency;
      if (typeof data205 === "string") {
        if (!pattern76.test(data205)) {
          const err395 = { instancePath: instancePath + "/efficiency", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
          if (vErrors === null) {
            vErrors = [err395];
          } else {
            vErrors.push(err395);
          }
          errors++;
        }
      } else {
        const err396 = { instancePath: instancePath + "/efficiency", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err396];
        } else {
          vErrors.push(err396);
        }
        errors++;
      }
    }
    if (data["depth-of-discharge"] !== void 0) {
      let data206 = data["depth-of-discharge"];
      if (typeof data206 === "string") {
        if (!pattern76.test(data206)) {
          const err397 = { instancePath: instancePath + "/depth-of-discharge", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
          if (vErrors === null) {
            vErrors = [err397];
          } else {
            vErrors.push(err397);
          }
          errors++;
        }
      } else {
        const err398 = { instancePath: instancePath + "/depth-of-discharge", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err398];
        } else {
          vErrors.push(err398);
        }
        errors++;
      }
    }
    if (data.health !== void 0) {
      let data207 = data.health;
      if (typeof data207 === "string") {
        if (!pattern76.test(data207)) {
          const err399 = { instancePath: instancePath + "/health", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
          if (vErrors === null) {
            vErrors = [err399];
          } else {
            vErrors.push(err399);
          }
          errors++;
        }
      } else {
        const err400 = { instancePath: instancePath + "/health", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err400];
        } else {
          vErrors.push(err400);
        }
        errors++;
      }
    }
    if (data.rack !== void 0) {
      let data208 = data.rack;
      if (typeof data208 === "string") {
        if (!pattern7.test(data208)) {
          const err401 = { instancePath: instancePath + "/rack", schemaPath: "#/properties/rack/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err401];
          } else {
            vErrors.push(err401);
          }
          errors++;
        }
      } else {
        const err402 = { instancePath: instancePath + "/rack", schemaPath: "#/properties/rack/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err402];
        } else {
          vErrors.push(err402);
        }
        errors++;
      }
    }
    if (data.unit !== void 0) {
      let data209 = data.unit;
      if (!(typeof data209 == "number" && (!(data209 % 1) && !isNaN(data209)) && isFinite(data209))) {
        const err403 = { instancePath: instancePath + "/unit", schemaPath: "#/properties/unit/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err403];
        } else {
          vErrors.push(err403);
        }
        errors++;
      }
      if (typeof data209 == "number" && isFinite(data209)) {
        if (data209 > 100 || isNaN(data209)) {
          const err404 = { instancePath: instancePath + "/unit", schemaPath: "#/properties/unit/maximum", keyword: "maximum", params: { comparison: "<=", limit: 100 } };
          if (vErrors === null) {
            vErrors = [err404];
          } else {
            vErrors.push(err404);
          }
          errors++;
        }
        if (data209 < 1 || isNaN(data209)) {
          const err405 = { instancePath: instancePath + "/unit", schemaPath: "#/properties/unit/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err405];
          } else {
            vErrors.push(err405);
          }
          errors++;
        }
      }
    }
    if (data.units !== void 0) {
      let data210 = data.units;
      if (!(typeof data210 == "number" && (!(data210 % 1) && !isNaN(data210)) && isFinite(data210))) {
        const err406 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err406];
        } else {
          vErrors.push(err406);
        }
        errors++;
      }
      if (typeof data210 == "number" && isFinite(data210)) {
        if (data210 > 100 || isNaN(data210)) {
          const err407 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/maximum", keyword: "maximum", params: { comparison: "<=", limit: 100 } };
          if (vErrors === null) {
            vErrors = [err407];
          } else {
            vErrors.push(err407);
          }
          errors++;
        }
        if (data210 < 1 || isNaN(data210)) {
          const err408 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err408];
          } else {
            vErrors.push(err408);
          }
          errors++;
        }
      }
    }
    if (data.side !== void 0) {
      let data211 = data.side;
      if (typeof data211 !== "string") {
        const err409 = { instancePath: instancePath + "/side", schemaPath: "#/properties/side/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err409];
        } else {
          vErrors.push(err409);
        }
        errors++;
      }
      if (!(data211 === "front" || data211 === "rear")) {
        const err410 = { instancePath: instancePath + "/side", schemaPath: "#/properties/side/enum", keyword: "enum", params: { allowedValues: schema41.properties.side.enum } };
        if (vErrors === null) {
          vErrors = [err410];
        } else {
          vErrors.push(err410);
        }
        errors++;
      }
    }
    if (data.width !== void 0) {
      let data212 = data.width;
      if (typeof data212 === "string") {
        if (!pattern84.test(data212)) {
          const err411 = { instancePath: instancePath + "/width", schemaPath: "#/$defs/length/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (m|mm)$" } };
          if (vErrors === null) {
            vErrors = [err411];
          } else {
            vErrors.push(err411);
          }
          errors++;
        }
      } else {
        const err412 = { instancePath: instancePath + "/width", schemaPath: "#/$defs/length/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err412];
        } else {
          vErrors.push(err412);
        }
        errors++;
      }
    }
    if (data.depth !== void 0) {
      let data213 = data.depth;
      if (typeof data213 === "string") {
        if (!pattern84.test(data213)) {
          const err413 = { instancePath: instancePath + "/depth", schemaPath: "#/$defs/length/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (m|mm)$" } };
          if (vErrors === null) {
            vErrors = [err413];
          } else {
            vErrors.push(err413);
          }
          errors++;
        }
      } else {
        const err414 = { instancePath: instancePath + "/depth", schemaPath: "#/$defs/length/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err414];
        } else {
          vErrors.push(err414);
        }
        errors++;
      }
    }
    if (data.weight !== void 0) {
      let data214 = data.weight;
      if (typeof data214 === "string") {
        if (!pattern86.test(data214)) {
          const err415 = { instancePath: instancePath + "/weight", schemaPath: "#/$defs/mass/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (kg|g)$" } };
          if (vErrors === null) {
            vErrors = [err415];
          } else {
            vErrors.push(err415);
          }
          errors++;
        }
      } else {
        const err416 = { instancePath: instancePath + "/weight", schemaPath: "#/$defs/mass/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err416];
        } else {
          vErrors.push(err416);
        }
        errors++;
      }
    }
    if (data.rows !== void 0) {
      let data215 = data.rows;
      if (!(typeof data215 == "number" && (!(data215 % 1) && !isNaN(data215)) && isFinite(data215))) {
        const err417 = { instancePath: instancePath + "/rows", schemaPath: "#/properties/rows/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err417];
        } else {
          vErrors.push(err417);
        }
        errors++;
      }
      if (typeof data215 == "number" && isFinite(data215)) {
        if (data215 > 8 || isNaN(data215)) {
          const err418 = { instancePath: instancePath + "/rows", schemaPath: "#/properties/rows/maximum", keyword: "maximum", params: { comparison: "<=", limit: 8 } };
          if (vErrors === null) {
            vErrors = [err418];
          } else {
            vErrors.push(err418);
          }
          errors++;
        }
        if (data215 < 1 || isNaN(data215)) {
          const err419 = { instancePath: instancePath + "/rows", schemaPath: "#/properties/rows/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err419];
          } else {
            vErrors.push(err419);
          }
          errors++;
        }
      }
    }
    if (data.order !== void 0) {
      let data216 = data.order;
      if (typeof data216 !== "string") {
        const err420 = { instancePath: instancePath + "/order", schemaPath: "#/properties/order/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err420];
        } else {
          vErrors.push(err420);
        }
        errors++;
      }
      if (!(data216 === "by-row" || data216 === "by-column")) {
        const err421 = { instancePath: instancePath + "/order", schemaPath: "#/properties/order/enum", keyword: "enum", params: { allowedValues: schema41.properties.order.enum } };
        if (vErrors === null) {
          vErrors = [err421];
        } else {
          vErrors.push(err421);
        }
        errors++;
      }
    }
  } else {
    const err422 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err422];
    } else {
      vErrors.push(err422);
    }
    errors++;
  }
  validate73.errors = vErrors;
  return errors === 0;
}
validate73.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var racks = validate83;
var schema121 = { "type": "object", "additionalProperties": false, "required": ["units"], "properties": { "units": { "type": "integer", "minimum": 1, "maximum": 100 }, "depth": { "$ref": "#/$defs/length" }, "numbered-from": { "type": "string", "enum": ["bottom", "top"] }, "bears": { "$ref": "#/$defs/mass" }, "location": { "type": "string" }, "description": { "type": "string" } } };
function validate83(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate83.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.units === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "units" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "units" || key0 === "depth" || key0 === "numbered-from" || key0 === "bears" || key0 === "location" || key0 === "description")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.units !== void 0) {
      let data0 = data.units;
      if (!(typeof data0 == "number" && (!(data0 % 1) && !isNaN(data0)) && isFinite(data0))) {
        const err2 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 100 || isNaN(data0)) {
          const err3 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/maximum", keyword: "maximum", params: { comparison: "<=", limit: 100 } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data0 < 1 || isNaN(data0)) {
          const err4 = { instancePath: instancePath + "/units", schemaPath: "#/properties/units/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      }
    }
    if (data.depth !== void 0) {
      let data1 = data.depth;
      if (typeof data1 === "string") {
        if (!pattern84.test(data1)) {
          const err5 = { instancePath: instancePath + "/depth", schemaPath: "#/$defs/length/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (m|mm)$" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/depth", schemaPath: "#/$defs/length/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["numbered-from"] !== void 0) {
      let data2 = data["numbered-from"];
      if (typeof data2 !== "string") {
        const err7 = { instancePath: instancePath + "/numbered-from", schemaPath: "#/properties/numbered-from/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
      if (!(data2 === "bottom" || data2 === "top")) {
        const err8 = { instancePath: instancePath + "/numbered-from", schemaPath: "#/properties/numbered-from/enum", keyword: "enum", params: { allowedValues: schema121.properties["numbered-from"].enum } };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.bears !== void 0) {
      let data3 = data.bears;
      if (typeof data3 === "string") {
        if (!pattern86.test(data3)) {
          const err9 = { instancePath: instancePath + "/bears", schemaPath: "#/$defs/mass/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (kg|g)$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/bears", schemaPath: "#/$defs/mass/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.location !== void 0) {
      if (typeof data.location !== "string") {
        const err11 = { instancePath: instancePath + "/location", schemaPath: "#/properties/location/type", keyword: "type", params: { type: "string" } };
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
        const err12 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate83.errors = vErrors;
  return errors === 0;
}
validate83.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var cables = validate84;
var schema124 = { "type": "object", "additionalProperties": false, "required": ["from", "to"], "properties": { "from": { "$ref": "#/$defs/port-end" }, "to": { "$ref": "#/$defs/port-end" }, "type": { "type": "string", "enum": ["cat5", "cat5e", "cat6", "cat6a", "cat7", "cat8", "om1", "om2", "om3", "om4", "om5", "os2", "dac", "coax-59", "coax-6", "coax-11"] }, "fibres": { "type": "integer", "minimum": 1 }, "length": { "$ref": "#/$defs/length" }, "through": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/port-end", "type": "string" } }, "duct": { "$ref": "#/$defs/name" }, "label": { "type": "string" }, "description": { "type": "string" }, "core": { "type": "string", "enum": ["copper", "clad-steel"] }, "attenuation": { "type": "object", "minProperties": 1, "propertyNames": { "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (MHz|GHz)$" }, "additionalProperties": { "$ref": "#/$defs/ratio" } } } };
var pattern90 = new RegExp("^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$", "u");
function validate84(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate84.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.from === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "from" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.to === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" } };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func1.call(schema124.properties, key0)) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        if (!pattern90.test(data0)) {
          const err3 = { instancePath: instancePath + "/from", schemaPath: "#/$defs/port-end/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/from", schemaPath: "#/$defs/port-end/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern90.test(data1)) {
          const err5 = { instancePath: instancePath + "/to", schemaPath: "#/$defs/port-end/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/to", schemaPath: "#/$defs/port-end/type", keyword: "type", params: { type: "string" } };
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
        const err7 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
      if (!(data2 === "cat5" || data2 === "cat5e" || data2 === "cat6" || data2 === "cat6a" || data2 === "cat7" || data2 === "cat8" || data2 === "om1" || data2 === "om2" || data2 === "om3" || data2 === "om4" || data2 === "om5" || data2 === "os2" || data2 === "dac" || data2 === "coax-59" || data2 === "coax-6" || data2 === "coax-11")) {
        const err8 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/enum", keyword: "enum", params: { allowedValues: schema124.properties.type.enum } };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.fibres !== void 0) {
      let data3 = data.fibres;
      if (!(typeof data3 == "number" && (!(data3 % 1) && !isNaN(data3)) && isFinite(data3))) {
        const err9 = { instancePath: instancePath + "/fibres", schemaPath: "#/properties/fibres/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 < 1 || isNaN(data3)) {
          const err10 = { instancePath: instancePath + "/fibres", schemaPath: "#/properties/fibres/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      }
    }
    if (data.length !== void 0) {
      let data4 = data.length;
      if (typeof data4 === "string") {
        if (!pattern84.test(data4)) {
          const err11 = { instancePath: instancePath + "/length", schemaPath: "#/$defs/length/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (m|mm)$" } };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/length", schemaPath: "#/$defs/length/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.through !== void 0) {
      let data5 = data.through;
      if (Array.isArray(data5)) {
        const len0 = data5.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data6 = data5[i0];
          if (typeof data6 !== "string") {
            const err13 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/properties/through/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
          if (typeof data6 === "string") {
            if (!pattern90.test(data6)) {
              const err14 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/$defs/port-end/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+(/[A-Za-z0-9_-]+)?$" } };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          } else {
            const err15 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/$defs/port-end/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
        let i1 = data5.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data5[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err16 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err17 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.duct !== void 0) {
      let data7 = data.duct;
      if (typeof data7 === "string") {
        if (func2(data7) > 63) {
          const err18 = { instancePath: instancePath + "/duct", schemaPath: "#/$defs/name/maxLength", keyword: "maxLength", params: { limit: 63 } };
          if (vErrors === null) {
            vErrors = [err18];
          } else {
            vErrors.push(err18);
          }
          errors++;
        }
        if (!pattern5.test(data7)) {
          const err19 = { instancePath: instancePath + "/duct", schemaPath: "#/$defs/name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" } };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
      } else {
        const err20 = { instancePath: instancePath + "/duct", schemaPath: "#/$defs/name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
    }
    if (data.label !== void 0) {
      if (typeof data.label !== "string") {
        const err21 = { instancePath: instancePath + "/label", schemaPath: "#/properties/label/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err22 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
    }
    if (data.core !== void 0) {
      let data10 = data.core;
      if (typeof data10 !== "string") {
        const err23 = { instancePath: instancePath + "/core", schemaPath: "#/properties/core/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
      if (!(data10 === "copper" || data10 === "clad-steel")) {
        const err24 = { instancePath: instancePath + "/core", schemaPath: "#/properties/core/enum", keyword: "enum", params: { allowedValues: schema124.properties.core.enum } };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
    if (data.attenuation !== void 0) {
      let data11 = data.attenuation;
      if (data11 && typeof data11 == "object" && !Array.isArray(data11)) {
        if (Object.keys(data11).length < 1) {
          const err25 = { instancePath: instancePath + "/attenuation", schemaPath: "#/properties/attenuation/minProperties", keyword: "minProperties", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err25];
          } else {
            vErrors.push(err25);
          }
          errors++;
        }
        for (const key1 in data11) {
          const _errs32 = errors;
          if (typeof key1 === "string") {
            if (!pattern54.test(key1)) {
              const err26 = { instancePath: instancePath + "/attenuation", schemaPath: "#/properties/attenuation/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (MHz|GHz)$" }, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err26];
              } else {
                vErrors.push(err26);
              }
              errors++;
            }
          } else {
            const err27 = { instancePath: instancePath + "/attenuation", schemaPath: "#/properties/attenuation/propertyNames/type", keyword: "type", params: { type: "string" }, propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err27];
            } else {
              vErrors.push(err27);
            }
            errors++;
          }
          var valid9 = _errs32 === errors;
          if (!valid9) {
            const err28 = { instancePath: instancePath + "/attenuation", schemaPath: "#/properties/attenuation/propertyNames", keyword: "propertyNames", params: { propertyName: key1 } };
            if (vErrors === null) {
              vErrors = [err28];
            } else {
              vErrors.push(err28);
            }
            errors++;
          }
        }
        for (const key2 in data11) {
          let data12 = data11[key2];
          if (typeof data12 === "string") {
            if (!pattern47.test(data12)) {
              const err29 = { instancePath: instancePath + "/attenuation/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
              if (vErrors === null) {
                vErrors = [err29];
              } else {
                vErrors.push(err29);
              }
              errors++;
            }
          } else {
            const err30 = { instancePath: instancePath + "/attenuation/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err30];
            } else {
              vErrors.push(err30);
            }
            errors++;
          }
        }
      } else {
        const err31 = { instancePath: instancePath + "/attenuation", schemaPath: "#/properties/attenuation/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
    }
  } else {
    const err32 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err32];
    } else {
      vErrors.push(err32);
    }
    errors++;
  }
  validate84.errors = vErrors;
  return errors === 0;
}
validate84.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var multiplexes = validate85;
var schema132 = { "type": "object", "additionalProperties": false, "required": ["system"], "properties": { "system": { "$ref": "#/$defs/system" }, "channel": { "type": ["integer", "string"], "pattern": "^[0-9]{1,2}A?$", "minimum": 1, "maximum": 99 }, "frequency": { "$ref": "#/$defs/frequency" }, "bandwidth": { "$ref": "#/$defs/frequency" }, "modulation": { "type": "string", "enum": ["qpsk", "dqpsk", "8psk", "16qam", "16apsk", "32qam", "32apsk", "64qam", "128qam", "256qam", "8vsb"] }, "code-rate": { "type": "string", "pattern": "^[0-9]{1,2}/[0-9]{1,2}$" }, "guard-interval": { "type": "string", "pattern": "^[0-9]{1,2}/[0-9]{1,3}$" }, "extended": { "type": "boolean" }, "symbol-rate": { "$ref": "#/$defs/symbol-rate" }, "polarisation": { "type": "string", "enum": ["vertical", "horizontal", "left", "right"] }, "pilots": { "type": "boolean" }, "segments": { "type": "integer", "minimum": 1, "maximum": 13 }, "frame": { "type": "object", "additionalProperties": false, "required": ["size", "symbols", "blocks"], "properties": { "size": { "type": "integer", "enum": [1, 2, 4, 8, 16, 32] }, "symbols": { "type": "integer", "minimum": 1, "maximum": 4095 }, "blocks": { "type": "integer", "minimum": 1, "maximum": 2047 } } }, "net-rate": { "$ref": "#/$defs/bit-rate" }, "description": { "type": "string" } } };
var pattern98 = new RegExp("^[0-9]{1,2}A?$", "u");
var pattern99 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$", "u");
var pattern101 = new RegExp("^[0-9]{1,2}/[0-9]{1,2}$", "u");
var pattern102 = new RegExp("^[0-9]{1,2}/[0-9]{1,3}$", "u");
var pattern103 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (kBd|MBd)$", "u");
function validate85(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate85.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.system === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "system" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func1.call(schema132.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.system !== void 0) {
      let data0 = data.system;
      if (typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/system", schemaPath: "#/$defs/system/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      if (!(data0 === "dvb-t" || data0 === "dvb-t2" || data0 === "dvb-c" || data0 === "j83b" || data0 === "dvb-s" || data0 === "dvb-s2" || data0 === "atsc" || data0 === "isdb-t")) {
        const err3 = { instancePath: instancePath + "/system", schemaPath: "#/$defs/system/enum", keyword: "enum", params: { allowedValues: schema95.enum } };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.channel !== void 0) {
      let data1 = data.channel;
      if (!(typeof data1 == "number" && (!(data1 % 1) && !isNaN(data1)) && isFinite(data1)) && typeof data1 !== "string") {
        const err4 = { instancePath: instancePath + "/channel", schemaPath: "#/properties/channel/type", keyword: "type", params: { type: schema132.properties.channel.type } };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
      if (typeof data1 == "number" && isFinite(data1)) {
        if (data1 > 99 || isNaN(data1)) {
          const err5 = { instancePath: instancePath + "/channel", schemaPath: "#/properties/channel/maximum", keyword: "maximum", params: { comparison: "<=", limit: 99 } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        if (data1 < 1 || isNaN(data1)) {
          const err6 = { instancePath: instancePath + "/channel", schemaPath: "#/properties/channel/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      }
      if (typeof data1 === "string") {
        if (!pattern98.test(data1)) {
          const err7 = { instancePath: instancePath + "/channel", schemaPath: "#/properties/channel/pattern", keyword: "pattern", params: { pattern: "^[0-9]{1,2}A?$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      }
    }
    if (data.frequency !== void 0) {
      let data2 = data.frequency;
      if (typeof data2 === "string") {
        if (!pattern99.test(data2)) {
          const err8 = { instancePath: instancePath + "/frequency", schemaPath: "#/$defs/frequency/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$" } };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/frequency", schemaPath: "#/$defs/frequency/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.bandwidth !== void 0) {
      let data3 = data.bandwidth;
      if (typeof data3 === "string") {
        if (!pattern99.test(data3)) {
          const err10 = { instancePath: instancePath + "/bandwidth", schemaPath: "#/$defs/frequency/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$" } };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/bandwidth", schemaPath: "#/$defs/frequency/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
    if (data.modulation !== void 0) {
      let data4 = data.modulation;
      if (typeof data4 !== "string") {
        const err12 = { instancePath: instancePath + "/modulation", schemaPath: "#/properties/modulation/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
      if (!(data4 === "qpsk" || data4 === "dqpsk" || data4 === "8psk" || data4 === "16qam" || data4 === "16apsk" || data4 === "32qam" || data4 === "32apsk" || data4 === "64qam" || data4 === "128qam" || data4 === "256qam" || data4 === "8vsb")) {
        const err13 = { instancePath: instancePath + "/modulation", schemaPath: "#/properties/modulation/enum", keyword: "enum", params: { allowedValues: schema132.properties.modulation.enum } };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data["code-rate"] !== void 0) {
      let data5 = data["code-rate"];
      if (typeof data5 === "string") {
        if (!pattern101.test(data5)) {
          const err14 = { instancePath: instancePath + "/code-rate", schemaPath: "#/properties/code-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]{1,2}/[0-9]{1,2}$" } };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
      } else {
        const err15 = { instancePath: instancePath + "/code-rate", schemaPath: "#/properties/code-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data["guard-interval"] !== void 0) {
      let data6 = data["guard-interval"];
      if (typeof data6 === "string") {
        if (!pattern102.test(data6)) {
          const err16 = { instancePath: instancePath + "/guard-interval", schemaPath: "#/properties/guard-interval/pattern", keyword: "pattern", params: { pattern: "^[0-9]{1,2}/[0-9]{1,3}$" } };
          if (vErrors === null) {
            vErrors = [err16];
          } else {
            vErrors.push(err16);
          }
          errors++;
        }
      } else {
        const err17 = { instancePath: instancePath + "/guard-interval", schemaPath: "#/properties/guard-interval/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.extended !== void 0) {
      if (typeof data.extended !== "boolean") {
        const err18 = { instancePath: instancePath + "/extended", schemaPath: "#/properties/extended/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data["symbol-rate"] !== void 0) {
      let data8 = data["symbol-rate"];
      if (typeof data8 === "string") {
        if (!pattern103.test(data8)) {
          const err19 = { instancePath: instancePath + "/symbol-rate", schemaPath: "#/$defs/symbol-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (kBd|MBd)$" } };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
      } else {
        const err20 = { instancePath: instancePath + "/symbol-rate", schemaPath: "#/$defs/symbol-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
    }
    if (data.polarisation !== void 0) {
      let data9 = data.polarisation;
      if (typeof data9 !== "string") {
        const err21 = { instancePath: instancePath + "/polarisation", schemaPath: "#/properties/polarisation/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      }
      if (!(data9 === "vertical" || data9 === "horizontal" || data9 === "left" || data9 === "right")) {
        const err22 = { instancePath: instancePath + "/polarisation", schemaPath: "#/properties/polarisation/enum", keyword: "enum", params: { allowedValues: schema132.properties.polarisation.enum } };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
    }
    if (data.pilots !== void 0) {
      if (typeof data.pilots !== "boolean") {
        const err23 = { instancePath: instancePath + "/pilots", schemaPath: "#/properties/pilots/type", keyword: "type", params: { type: "boolean" } };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data.segments !== void 0) {
      let data11 = data.segments;
      if (!(typeof data11 == "number" && (!(data11 % 1) && !isNaN(data11)) && isFinite(data11))) {
        const err24 = { instancePath: instancePath + "/segments", schemaPath: "#/properties/segments/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
      if (typeof data11 == "number" && isFinite(data11)) {
        if (data11 > 13 || isNaN(data11)) {
          const err25 = { instancePath: instancePath + "/segments", schemaPath: "#/properties/segments/maximum", keyword: "maximum", params: { comparison: "<=", limit: 13 } };
          if (vErrors === null) {
            vErrors = [err25];
          } else {
            vErrors.push(err25);
          }
          errors++;
        }
        if (data11 < 1 || isNaN(data11)) {
          const err26 = { instancePath: instancePath + "/segments", schemaPath: "#/properties/segments/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err26];
          } else {
            vErrors.push(err26);
          }
          errors++;
        }
      }
    }
    if (data.frame !== void 0) {
      let data12 = data.frame;
      if (data12 && typeof data12 == "object" && !Array.isArray(data12)) {
        if (data12.size === void 0) {
          const err27 = { instancePath: instancePath + "/frame", schemaPath: "#/properties/frame/required", keyword: "required", params: { missingProperty: "size" } };
          if (vErrors === null) {
            vErrors = [err27];
          } else {
            vErrors.push(err27);
          }
          errors++;
        }
        if (data12.symbols === void 0) {
          const err28 = { instancePath: instancePath + "/frame", schemaPath: "#/properties/frame/required", keyword: "required", params: { missingProperty: "symbols" } };
          if (vErrors === null) {
            vErrors = [err28];
          } else {
            vErrors.push(err28);
          }
          errors++;
        }
        if (data12.blocks === void 0) {
          const err29 = { instancePath: instancePath + "/frame", schemaPath: "#/properties/frame/required", keyword: "required", params: { missingProperty: "blocks" } };
          if (vErrors === null) {
            vErrors = [err29];
          } else {
            vErrors.push(err29);
          }
          errors++;
        }
        for (const key1 in data12) {
          if (!(key1 === "size" || key1 === "symbols" || key1 === "blocks")) {
            const err30 = { instancePath: instancePath + "/frame", schemaPath: "#/properties/frame/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 } };
            if (vErrors === null) {
              vErrors = [err30];
            } else {
              vErrors.push(err30);
            }
            errors++;
          }
        }
        if (data12.size !== void 0) {
          let data13 = data12.size;
          if (!(typeof data13 == "number" && (!(data13 % 1) && !isNaN(data13)) && isFinite(data13))) {
            const err31 = { instancePath: instancePath + "/frame/size", schemaPath: "#/properties/frame/properties/size/type", keyword: "type", params: { type: "integer" } };
            if (vErrors === null) {
              vErrors = [err31];
            } else {
              vErrors.push(err31);
            }
            errors++;
          }
          if (!(data13 === 1 || data13 === 2 || data13 === 4 || data13 === 8 || data13 === 16 || data13 === 32)) {
            const err32 = { instancePath: instancePath + "/frame/size", schemaPath: "#/properties/frame/properties/size/enum", keyword: "enum", params: { allowedValues: schema132.properties.frame.properties.size.enum } };
            if (vErrors === null) {
              vErrors = [err32];
            } else {
              vErrors.push(err32);
            }
            errors++;
          }
        }
        if (data12.symbols !== void 0) {
          let data14 = data12.symbols;
          if (!(typeof data14 == "number" && (!(data14 % 1) && !isNaN(data14)) && isFinite(data14))) {
            const err33 = { instancePath: instancePath + "/frame/symbols", schemaPath: "#/properties/frame/properties/symbols/type", keyword: "type", params: { type: "integer" } };
            if (vErrors === null) {
              vErrors = [err33];
            } else {
              vErrors.push(err33);
            }
            errors++;
          }
          if (typeof data14 == "number" && isFinite(data14)) {
            if (data14 > 4095 || isNaN(data14)) {
              const err34 = { instancePath: instancePath + "/frame/symbols", schemaPath: "#/properties/frame/properties/symbols/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4095 } };
              if (vErrors === null) {
                vErrors = [err34];
              } else {
                vErrors.push(err34);
              }
              errors++;
            }
            if (data14 < 1 || isNaN(data14)) {
              const err35 = { instancePath: instancePath + "/frame/symbols", schemaPath: "#/properties/frame/properties/symbols/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
              if (vErrors === null) {
                vErrors = [err35];
              } else {
                vErrors.push(err35);
              }
              errors++;
            }
          }
        }
        if (data12.blocks !== void 0) {
          let data15 = data12.blocks;
          if (!(typeof data15 == "number" && (!(data15 % 1) && !isNaN(data15)) && isFinite(data15))) {
            const err36 = { instancePath: instancePath + "/frame/blocks", schemaPath: "#/properties/frame/properties/blocks/type", keyword: "type", params: { type: "integer" } };
            if (vErrors === null) {
              vErrors = [err36];
            } else {
              vErrors.push(err36);
            }
            errors++;
          }
          if (typeof data15 == "number" && isFinite(data15)) {
            if (data15 > 2047 || isNaN(data15)) {
              const err37 = { instancePath: instancePath + "/frame/blocks", schemaPath: "#/properties/frame/properties/blocks/maximum", keyword: "maximum", params: { comparison: "<=", limit: 2047 } };
              if (vErrors === null) {
                vErrors = [err37];
              } else {
                vErrors.push(err37);
              }
              errors++;
            }
            if (data15 < 1 || isNaN(data15)) {
              const err38 = { instancePath: instancePath + "/frame/blocks", schemaPath: "#/properties/frame/properties/blocks/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
              if (vErrors === null) {
                vErrors = [err38];
              } else {
                vErrors.push(err38);
              }
              errors++;
            }
          }
        }
      } else {
        const err39 = { instancePath: instancePath + "/frame", schemaPath: "#/properties/frame/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err39];
        } else {
          vErrors.push(err39);
        }
        errors++;
      }
    }
    if (data["net-rate"] !== void 0) {
      let data16 = data["net-rate"];
      if (typeof data16 === "string") {
        if (!pattern15.test(data16)) {
          const err40 = { instancePath: instancePath + "/net-rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err40];
          } else {
            vErrors.push(err40);
          }
          errors++;
        }
      } else {
        const err41 = { instancePath: instancePath + "/net-rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err41];
        } else {
          vErrors.push(err41);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err42 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err42];
        } else {
          vErrors.push(err42);
        }
        errors++;
      }
    }
  } else {
    const err43 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err43];
    } else {
      vErrors.push(err43);
    }
    errors++;
  }
  validate85.errors = vErrors;
  return errors === 0;
}
validate85.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var services = validate86;
var schema139 = { "type": "object", "additionalProperties": false, "required": ["multiplex"], "properties": { "multiplex": { "type": ["array", "string"], "minItems": 1, "uniqueItems": true, "items": { "$ref": "#/$defs/multiplex-name", "type": "string" }, "if": { "type": "string" }, "then": { "$ref": "#/$defs/multiplex-name" } }, "rate": { "$ref": "#/$defs/bit-rate" }, "peak-rate": { "$ref": "#/$defs/bit-rate" }, "description": { "type": "string" } } };
function validate86(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate86.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.multiplex === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "multiplex" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "multiplex" || key0 === "rate" || key0 === "peak-rate" || key0 === "description")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.multiplex !== void 0) {
      let data0 = data.multiplex;
      if (!Array.isArray(data0) && typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/multiplex", schemaPath: "#/properties/multiplex/type", keyword: "type", params: { type: schema139.properties.multiplex.type } };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      const _errs4 = errors;
      let valid1 = true;
      const _errs5 = errors;
      if (typeof data0 !== "string") {
        const err3 = {};
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
      var _valid0 = _errs5 === errors;
      errors = _errs4;
      if (vErrors !== null) {
        if (_errs4) {
          vErrors.length = _errs4;
        } else {
          vErrors = null;
        }
      }
      if (_valid0) {
        const _errs7 = errors;
        if (typeof data0 === "string") {
          if (!pattern7.test(data0)) {
            const err4 = { instancePath: instancePath + "/multiplex", schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        } else {
          const err5 = { instancePath: instancePath + "/multiplex", schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        var _valid0 = _errs7 === errors;
        valid1 = _valid0;
      }
      if (!valid1) {
        const err6 = { instancePath: instancePath + "/multiplex", schemaPath: "#/properties/multiplex/if", keyword: "if", params: { failingKeyword: "then" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (Array.isArray(data0)) {
        if (data0.length < 1) {
          const err7 = { instancePath: instancePath + "/multiplex", schemaPath: "#/properties/multiplex/minItems", keyword: "minItems", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        const len0 = data0.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data1 = data0[i0];
          if (typeof data1 !== "string") {
            const err8 = { instancePath: instancePath + "/multiplex/" + i0, schemaPath: "#/properties/multiplex/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
          if (typeof data1 === "string") {
            if (!pattern7.test(data1)) {
              const err9 = { instancePath: instancePath + "/multiplex/" + i0, schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
          } else {
            const err10 = { instancePath: instancePath + "/multiplex/" + i0, schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
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
              const err11 = { instancePath: instancePath + "/multiplex", schemaPath: "#/properties/multiplex/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      }
    }
    if (data.rate !== void 0) {
      let data2 = data.rate;
      if (typeof data2 === "string") {
        if (!pattern15.test(data2)) {
          const err12 = { instancePath: instancePath + "/rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      } else {
        const err13 = { instancePath: instancePath + "/rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data["peak-rate"] !== void 0) {
      let data3 = data["peak-rate"];
      if (typeof data3 === "string") {
        if (!pattern15.test(data3)) {
          const err14 = { instancePath: instancePath + "/peak-rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
      } else {
        const err15 = { instancePath: instancePath + "/peak-rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err16 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
  } else {
    const err17 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err17];
    } else {
      vErrors.push(err17);
    }
    errors++;
  }
  validate86.errors = vErrors;
  return errors === 0;
}
validate86.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var occasions = validate87;
function validate87(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate87.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "services" || key0 === "multiplexes" || key0 === "description")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.services !== void 0) {
      let data0 = data.services;
      if (Array.isArray(data0)) {
        const len0 = data0.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data1 = data0[i0];
          if (typeof data1 !== "string") {
            const err1 = { instancePath: instancePath + "/services/" + i0, schemaPath: "#/properties/services/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err1];
            } else {
              vErrors.push(err1);
            }
            errors++;
          }
          if (typeof data1 === "string") {
            if (!pattern7.test(data1)) {
              const err2 = { instancePath: instancePath + "/services/" + i0, schemaPath: "#/$defs/service-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err2];
              } else {
                vErrors.push(err2);
              }
              errors++;
            }
          } else {
            const err3 = { instancePath: instancePath + "/services/" + i0, schemaPath: "#/$defs/service-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
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
              const err4 = { instancePath: instancePath + "/services", schemaPath: "#/properties/services/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/services", schemaPath: "#/properties/services/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.multiplexes !== void 0) {
      let data2 = data.multiplexes;
      if (Array.isArray(data2)) {
        const len1 = data2.length;
        for (let i2 = 0; i2 < len1; i2++) {
          let data3 = data2[i2];
          if (typeof data3 !== "string") {
            const err6 = { instancePath: instancePath + "/multiplexes/" + i2, schemaPath: "#/properties/multiplexes/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
          if (typeof data3 === "string") {
            if (!pattern7.test(data3)) {
              const err7 = { instancePath: instancePath + "/multiplexes/" + i2, schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
          } else {
            const err8 = { instancePath: instancePath + "/multiplexes/" + i2, schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
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
              const err9 = { instancePath: instancePath + "/multiplexes", schemaPath: "#/properties/multiplexes/uniqueItems", keyword: "uniqueItems", params: { i: i3, j: j1 } };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
              break;
            }
            indices1[item1] = i3;
          }
        }
      } else {
        const err10 = { instancePath: instancePath + "/multiplexes", schemaPath: "#/properties/multiplexes/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err11 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate87.errors = vErrors;
  return errors === 0;
}
validate87.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var streams = validate88;
var schema149 = { "type": "object", "additionalProperties": false, "required": ["source"], "properties": { "source": { "$ref": "#/$defs/device-name" }, "carries": { "$ref": "#/$defs/stream-name" }, "transport": { "type": "string", "enum": ["rtsp", "rtsp-udp", "rtp", "ts-udp", "ts-rtp"] }, "port": { "type": ["integer", "string"], "pattern": "^auto$", "minimum": 1, "maximum": 65535 }, "path": { "type": "string", "pattern": "^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$" }, "credentials": { "type": "string", "maxLength": 63, "pattern": "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" }, "group": { "type": "string", "pattern": "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" }, "ttl": { "type": "integer", "minimum": 1, "maximum": 255 }, "video": { "$ref": "#/$defs/video" }, "audio": { "$ref": "#/$defs/audio" }, "receivers": { "type": "array", "uniqueItems": true, "items": { "$ref": "#/$defs/device-name", "type": "string" } }, "packet-size": { "$ref": "#/$defs/size" }, "mux-rate": { "$ref": "#/$defs/bit-rate" }, "egress": { "$ref": "#/$defs/own-port" }, "description": { "type": "string" }, "service": { "$ref": "#/$defs/service-name" }, "multiplex": { "$ref": "#/$defs/multiplex-name" } } };
var pattern116 = new RegExp("^auto$", "u");
var pattern117 = new RegExp("^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$", "u");
var pattern128 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$", "u");
var pattern123 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$", "u");
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
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "codec" || key0 === "size" || key0 === "frame-rate" || key0 === "bitrate" || key0 === "peak-bitrate" || key0 === "keyframe-interval")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        const err1 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/video-codec/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (!(data0 === "h264" || data0 === "h265" || data0 === "mpeg2" || data0 === "mjpeg" || data0 === "av1" || data0 === "vp9")) {
        const err2 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/video-codec/enum", keyword: "enum", params: { allowedValues: schema65.enum } };
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
        if (!pattern35.test(data1)) {
          const err3 = { instancePath: instancePath + "/size", schemaPath: "#/properties/size/pattern", keyword: "pattern", params: { pattern: "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/size", schemaPath: "#/properties/size/type", keyword: "type", params: { type: "string" } };
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
          const err5 = { instancePath: instancePath + "/frame-rate", schemaPath: "#/properties/frame-rate/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/frame-rate", schemaPath: "#/properties/frame-rate/type", keyword: "type", params: { type: "number" } };
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
        if (!pattern15.test(data3)) {
          const err7 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern15.test(data4)) {
          const err9 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern123.test(data5)) {
          const err11 = { instancePath: instancePath + "/keyframe-interval", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" } };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/keyframe-interval", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate54.errors = vErrors;
  return errors === 0;
}
validate54.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate56(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate56.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "codec" || key0 === "bitrate" || key0 === "peak-bitrate" || key0 === "sample-rate" || key0 === "channels")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
        const err1 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/audio-codec/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
      if (!(data0 === "pcma" || data0 === "pcmu" || data0 === "g722" || data0 === "aac" || data0 === "opus" || data0 === "mp2" || data0 === "ac3" || data0 === "l16")) {
        const err2 = { instancePath: instancePath + "/codec", schemaPath: "#/$defs/audio-codec/enum", keyword: "enum", params: { allowedValues: schema66.enum } };
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
        if (!pattern15.test(data1)) {
          const err3 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern15.test(data2)) {
          const err5 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/peak-bitrate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern99.test(data3)) {
          const err7 = { instancePath: instancePath + "/sample-rate", schemaPath: "#/$defs/frequency/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/sample-rate", schemaPath: "#/$defs/frequency/type", keyword: "type", params: { type: "string" } };
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
        const err9 = { instancePath: instancePath + "/channels", schemaPath: "#/properties/channels/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
      if (typeof data4 == "number" && isFinite(data4)) {
        if (data4 < 1 || isNaN(data4)) {
          const err10 = { instancePath: instancePath + "/channels", schemaPath: "#/properties/channels/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
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
    const err11 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err11];
    } else {
      vErrors.push(err11);
    }
    errors++;
  }
  validate56.errors = vErrors;
  return errors === 0;
}
validate56.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate88(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate88.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.source === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "source" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func1.call(schema149.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
          const err2 = { instancePath: instancePath + "/source", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/source", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
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
          const err4 = { instancePath: instancePath + "/carries", schemaPath: "#/$defs/stream-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/carries", schemaPath: "#/$defs/stream-name/type", keyword: "type", params: { type: "string" } };
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
        const err6 = { instancePath: instancePath + "/transport", schemaPath: "#/properties/transport/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (!(data2 === "rtsp" || data2 === "rtsp-udp" || data2 === "rtp" || data2 === "ts-udp" || data2 === "ts-rtp")) {
        const err7 = { instancePath: instancePath + "/transport", schemaPath: "#/properties/transport/enum", keyword: "enum", params: { allowedValues: schema149.properties.transport.enum } };
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
        const err8 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/type", keyword: "type", params: { type: schema149.properties.port.type } };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 > 65535 || isNaN(data3)) {
          const err9 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/maximum", keyword: "maximum", params: { comparison: "<=", limit: 65535 } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        if (data3 < 1 || isNaN(data3)) {
          const err10 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      }
      if (typeof data3 === "string") {
        if (!pattern116.test(data3)) {
          const err11 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/pattern", keyword: "pattern", params: { pattern: "^auto$" } };
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
        if (!pattern117.test(data4)) {
          const err12 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/pattern", keyword: "pattern", params: { pattern: "^/[^\\u0000-\\u001f\\u007f\\ud800-\\udfff]*$" } };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      } else {
        const err13 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/type", keyword: "type", params: { type: "string" } };
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
        if (func2(data5) > 63) {
          const err14 = { instancePath: instancePath + "/credentials", schemaPath: "#/properties/credentials/maxLength", keyword: "maxLength", params: { limit: 63 } };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
        if (!pattern5.test(data5)) {
          const err15 = { instancePath: instancePath + "/credentials", schemaPath: "#/properties/credentials/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*$" } };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      } else {
        const err16 = { instancePath: instancePath + "/credentials", schemaPath: "#/properties/credentials/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.group !== void 0) {
      let data6 = data.group;
      if (typeof data6 === "string") {
        if (!pattern19.test(data6)) {
          const err17 = { instancePath: instancePath + "/group", schemaPath: "#/properties/group/pattern", keyword: "pattern", params: { pattern: "^(auto|((25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9])\\.){3}(25[0-5]|2[0-4][0-9]|1[0-9]{2}|[1-9]?[0-9]))$" } };
          if (vErrors === null) {
            vErrors = [err17];
          } else {
            vErrors.push(err17);
          }
          errors++;
        }
      } else {
        const err18 = { instancePath: instancePath + "/group", schemaPath: "#/properties/group/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.ttl !== void 0) {
      let data7 = data.ttl;
      if (!(typeof data7 == "number" && (!(data7 % 1) && !isNaN(data7)) && isFinite(data7))) {
        const err19 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
      if (typeof data7 == "number" && isFinite(data7)) {
        if (data7 > 255 || isNaN(data7)) {
          const err20 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/maximum", keyword: "maximum", params: { comparison: "<=", limit: 255 } };
          if (vErrors === null) {
            vErrors = [err20];
          } else {
            vErrors.push(err20);
          }
          errors++;
        }
        if (data7 < 1 || isNaN(data7)) {
          const err21 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
          if (vErrors === null) {
            vErrors = [err21];
          } else {
            vErrors.push(err21);
          }
          errors++;
        }
      }
    }
    if (data.video !== void 0) {
      if (!validate54(data.video, { instancePath: instancePath + "/video", parentData: data, parentDataProperty: "video", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate54.errors;
        else for (const each of validate54.errors) vErrors.push(each);
        errors = vErrors.length;
      }
    }
    if (data.audio !== void 0) {
      if (!validate56(data.audio, { instancePath: instancePath + "/audio", parentData: data, parentDataProperty: "audio", rootData, dynamicAnchors })) {
        if (vErrors === null) vErrors = validate56.errors;
        else for (const each of validate56.errors) vErrors.push(each);
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
            const err22 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/properties/receivers/items/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err22];
            } else {
              vErrors.push(err22);
            }
            errors++;
          }
          if (typeof data11 === "string") {
            if (!pattern7.test(data11)) {
              const err23 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err23];
              } else {
                vErrors.push(err23);
              }
              errors++;
            }
          } else {
            const err24 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
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
              const err25 = { instancePath: instancePath + "/receivers", schemaPath: "#/properties/receivers/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err26 = { instancePath: instancePath + "/receivers", schemaPath: "#/properties/receivers/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err26];
        } else {
          vErrors.push(err26);
        }
        errors++;
      }
    }
    if (data["packet-size"] !== void 0) {
      let data12 = data["packet-size"];
      if (typeof data12 === "string") {
        if (!pattern128.test(data12)) {
          const err27 = { instancePath: instancePath + "/packet-size", schemaPath: "#/$defs/size/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$" } };
          if (vErrors === null) {
            vErrors = [err27];
          } else {
            vErrors.push(err27);
          }
          errors++;
        }
      } else {
        const err28 = { instancePath: instancePath + "/packet-size", schemaPath: "#/$defs/size/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data["mux-rate"] !== void 0) {
      let data13 = data["mux-rate"];
      if (typeof data13 === "string") {
        if (!pattern15.test(data13)) {
          const err29 = { instancePath: instancePath + "/mux-rate", schemaPath: "#/$defs/bit-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err29];
          } else {
            vErrors.push(err29);
          }
          errors++;
        }
      } else {
        const err30 = { instancePath: instancePath + "/mux-rate", schemaPath: "#/$defs/bit-rate/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err30];
        } else {
          vErrors.push(err30);
        }
        errors++;
      }
    }
    if (data.egress !== void 0) {
      let data14 = data.egress;
      if (typeof data14 !== "string" && !(typeof data14 == "number" && (!(data14 % 1) && !isNaN(data14)) && isFinite(data14))) {
        const err31 = { instancePath: instancePath + "/egress", schemaPath: "#/$defs/own-port/type", keyword: "type", params: { type: schema68.type } };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
      if (typeof data14 === "string") {
        if (!pattern7.test(data14)) {
          const err32 = { instancePath: instancePath + "/egress", schemaPath: "#/$defs/own-port/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err32];
          } else {
            vErrors.push(err32);
          }
          errors++;
        }
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err33 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err33];
        } else {
          vErrors.push(err33);
        }
        errors++;
      }
    }
    if (data.service !== void 0) {
      let data16 = data.service;
      if (typeof data16 === "string") {
        if (!pattern7.test(data16)) {
          const err34 = { instancePath: instancePath + "/service", schemaPath: "#/$defs/service-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err34];
          } else {
            vErrors.push(err34);
          }
          errors++;
        }
      } else {
        const err35 = { instancePath: instancePath + "/service", schemaPath: "#/$defs/service-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err35];
        } else {
          vErrors.push(err35);
        }
        errors++;
      }
    }
    if (data.multiplex !== void 0) {
      let data17 = data.multiplex;
      if (typeof data17 === "string") {
        if (!pattern7.test(data17)) {
          const err36 = { instancePath: instancePath + "/multiplex", schemaPath: "#/$defs/multiplex-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err36];
          } else {
            vErrors.push(err36);
          }
          errors++;
        }
      } else {
        const err37 = { instancePath: instancePath + "/multiplex", schemaPath: "#/$defs/multiplex-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err37];
        } else {
          vErrors.push(err37);
        }
        errors++;
      }
    }
  } else {
    const err38 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err38];
    } else {
      vErrors.push(err38);
    }
    errors++;
  }
  validate88.errors = vErrors;
  return errors === 0;
}
validate88.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var traffic = validate91;
var pattern136 = new RegExp("^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "u");
function validate91(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate91.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.from === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "from" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.to === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" } };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.rate === void 0) {
      const err2 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "rate" } };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "from" || key0 === "to" || key0 === "rate" || key0 === "back" || key0 === "description")) {
        const err3 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.from !== void 0) {
      let data0 = data.from;
      if (typeof data0 === "string") {
        if (!pattern7.test(data0)) {
          const err4 = { instancePath: instancePath + "/from", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/from", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      let data1 = data.to;
      if (typeof data1 === "string") {
        if (!pattern7.test(data1)) {
          const err6 = { instancePath: instancePath + "/to", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/to", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.rate !== void 0) {
      let data2 = data.rate;
      if (typeof data2 === "string") {
        if (!pattern136.test(data2)) {
          const err8 = { instancePath: instancePath + "/rate", schemaPath: "#/$defs/bit-rate-or-none/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/rate", schemaPath: "#/$defs/bit-rate-or-none/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.back !== void 0) {
      let data3 = data.back;
      if (typeof data3 === "string") {
        if (!pattern136.test(data3)) {
          const err10 = { instancePath: instancePath + "/back", schemaPath: "#/$defs/bit-rate-or-none/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" } };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/back", schemaPath: "#/$defs/bit-rate-or-none/type", keyword: "type", params: { type: "string" } };
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
        const err12 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate91.errors = vErrors;
  return errors === 0;
}
validate91.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var volumes = validate92;
var schema175 = { "type": "object", "additionalProperties": false, "required": ["host", "capacity"], "properties": { "host": { "$ref": "#/$defs/device-name" }, "capacity": { "$ref": "#/$defs/size" }, "path": { "type": "string", "pattern": "^/" }, "disks": { "type": "integer", "minimum": 1 }, "redundancy": { "type": "string", "enum": ["none", "mirror", "raid5", "raid6", "raid10"] }, "reserve": { "$ref": "#/$defs/percentage" }, "sustained-write": { "$ref": "#/$defs/byte-rate" }, "description": { "type": "string" } } };
var pattern141 = new RegExp("^/", "u");
var pattern143 = new RegExp("^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$", "u");
function validate92(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate92.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.host === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "host" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.capacity === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "capacity" } };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "host" || key0 === "capacity" || key0 === "path" || key0 === "disks" || key0 === "redundancy" || key0 === "reserve" || key0 === "sustained-write" || key0 === "description")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
          const err3 = { instancePath: instancePath + "/host", schemaPath: "#/$defs/device-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/host", schemaPath: "#/$defs/device-name/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern128.test(data1)) {
          const err5 = { instancePath: instancePath + "/capacity", schemaPath: "#/$defs/size/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/capacity", schemaPath: "#/$defs/size/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern141.test(data2)) {
          const err7 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/pattern", keyword: "pattern", params: { pattern: "^/" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/path", schemaPath: "#/properties/path/type", keyword: "type", params: { type: "string" } };
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
        const err9 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/type", keyword: "type", params: { type: "integer" } };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 < 1 || isNaN(data3)) {
          const err10 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 } };
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
        const err11 = { instancePath: instancePath + "/redundancy", schemaPath: "#/properties/redundancy/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
      if (!(data4 === "none" || data4 === "mirror" || data4 === "raid5" || data4 === "raid6" || data4 === "raid10")) {
        const err12 = { instancePath: instancePath + "/redundancy", schemaPath: "#/properties/redundancy/enum", keyword: "enum", params: { allowedValues: schema175.properties.redundancy.enum } };
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
        if (!pattern76.test(data5)) {
          const err13 = { instancePath: instancePath + "/reserve", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/reserve", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern143.test(data6)) {
          const err15 = { instancePath: instancePath + "/sustained-write", schemaPath: "#/$defs/byte-rate/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$" } };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
      } else {
        const err16 = { instancePath: instancePath + "/sustained-write", schemaPath: "#/$defs/byte-rate/type", keyword: "type", params: { type: "string" } };
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
        const err17 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
  } else {
    const err18 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err18];
    } else {
      vErrors.push(err18);
    }
    errors++;
  }
  validate92.errors = vErrors;
  return errors === 0;
}
validate92.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var recordings = validate93;
function validate93(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate93.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.stream === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "stream" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.volume === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "volume" } };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "stream" || key0 === "volume" || key0 === "segment" || key0 === "keep" || key0 === "file" || key0 === "description")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
          const err3 = { instancePath: instancePath + "/stream", schemaPath: "#/$defs/stream-name/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/stream", schemaPath: "#/$defs/stream-name/type", keyword: "type", params: { type: "string" } };
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
          const err5 = { instancePath: instancePath + "/volume", schemaPath: "#/properties/volume/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/volume", schemaPath: "#/properties/volume/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern123.test(data2)) {
          const err7 = { instancePath: instancePath + "/segment", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/segment", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern123.test(data3)) {
          const err9 = { instancePath: instancePath + "/keep", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/keep", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" } };
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
          const err11 = { instancePath: instancePath + "/file", schemaPath: "#/properties/file/minLength", keyword: "minLength", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/file", schemaPath: "#/properties/file/type", keyword: "type", params: { type: "string" } };
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
        const err13 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
  } else {
    const err14 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err14];
    } else {
      vErrors.push(err14);
    }
    errors++;
  }
  validate93.errors = vErrors;
  return errors === 0;
}
validate93.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var policies = validate94;
var pattern156 = new RegExp("^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$", "u");
function validate66(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate66.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.recordings === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "recordings" } };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "recordings" || key0 === "at-least" || key0 === "at-most" || key0 === "because")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
          const err2 = { instancePath: instancePath + "/recordings", schemaPath: "#/properties/recordings/minItems", keyword: "minItems", params: { limit: 1 } };
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
              const err3 = { instancePath: instancePath + "/recordings/" + i0, schemaPath: "#/properties/recordings/items/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
              if (vErrors === null) {
                vErrors = [err3];
              } else {
                vErrors.push(err3);
              }
              errors++;
            }
          } else {
            const err4 = { instancePath: instancePath + "/recordings/" + i0, schemaPath: "#/properties/recordings/items/type", keyword: "type", params: { type: "string" } };
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
              const err5 = { instancePath: instancePath + "/recordings", schemaPath: "#/properties/recordings/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 } };
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
        const err6 = { instancePath: instancePath + "/recordings", schemaPath: "#/properties/recordings/type", keyword: "type", params: { type: "array" } };
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
        if (!pattern156.test(data2)) {
          const err7 = { instancePath: instancePath + "/at-least", schemaPath: "#/$defs/duration-or-none/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" } };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/at-least", schemaPath: "#/$defs/duration-or-none/type", keyword: "type", params: { type: "string" } };
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
        if (!pattern123.test(data3)) {
          const err9 = { instancePath: instancePath + "/at-most", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" } };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/at-most", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" } };
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
          const err11 = { instancePath: instancePath + "/because", schemaPath: "#/properties/because/minLength", keyword: "minLength", params: { limit: 1 } };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/because", schemaPath: "#/properties/because/type", keyword: "type", params: { type: "string" } };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate66.errors = vErrors;
  return errors === 0;
}
validate66.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
function validate94(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate94.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "link-load" || key0 === "airtime" || key0 === "volume-fill" || key0 === "retention" || key0 === "runtime" || key0 === "aerial-system")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
            const err1 = { instancePath: instancePath + "/link-load", schemaPath: "#/properties/link-load/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 } };
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
            if (!pattern76.test(data1)) {
              const err2 = { instancePath: instancePath + "/link-load/warn", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
              if (vErrors === null) {
                vErrors = [err2];
              } else {
                vErrors.push(err2);
              }
              errors++;
            }
          } else {
            const err3 = { instancePath: instancePath + "/link-load/warn", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
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
            if (!pattern76.test(data2)) {
              const err4 = { instancePath: instancePath + "/link-load/limit", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          } else {
            const err5 = { instancePath: instancePath + "/link-load/limit", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/link-load", schemaPath: "#/properties/link-load/type", keyword: "type", params: { type: "object" } };
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
            const err7 = { instancePath: instancePath + "/airtime", schemaPath: "#/properties/airtime/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 } };
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
            if (!pattern76.test(data4)) {
              const err8 = { instancePath: instancePath + "/airtime/warn", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/airtime/warn", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
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
            if (!pattern76.test(data5)) {
              const err10 = { instancePath: instancePath + "/airtime/limit", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          } else {
            const err11 = { instancePath: instancePath + "/airtime/limit", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/airtime", schemaPath: "#/properties/airtime/type", keyword: "type", params: { type: "object" } };
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
            const err13 = { instancePath: instancePath + "/volume-fill", schemaPath: "#/properties/volume-fill/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 } };
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
            if (!pattern76.test(data7)) {
              const err14 = { instancePath: instancePath + "/volume-fill/warn", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          } else {
            const err15 = { instancePath: instancePath + "/volume-fill/warn", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
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
            if (!pattern76.test(data8)) {
              const err16 = { instancePath: instancePath + "/volume-fill/limit", schemaPath: "#/$defs/percentage/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" } };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
          } else {
            const err17 = { instancePath: instancePath + "/volume-fill/limit", schemaPath: "#/$defs/percentage/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
      } else {
        const err18 = { instancePath: instancePath + "/volume-fill", schemaPath: "#/properties/volume-fill/type", keyword: "type", params: { type: "object" } };
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
          if (!validate66(data9[i0], { instancePath: instancePath + "/retention/" + i0, parentData: data9, parentDataProperty: i0, rootData, dynamicAnchors })) {
            if (vErrors === null) vErrors = validate66.errors;
            else for (const each of validate66.errors) vErrors.push(each);
            errors = vErrors.length;
          }
        }
      } else {
        const err19 = { instancePath: instancePath + "/retention", schemaPath: "#/properties/retention/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
    if (data.runtime !== void 0) {
      let data11 = data.runtime;
      if (data11 && typeof data11 == "object" && !Array.isArray(data11)) {
        for (const key4 in data11) {
          if (!(key4 === "cameras")) {
            const err20 = { instancePath: instancePath + "/runtime", schemaPath: "#/properties/runtime/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 } };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
        }
        if (data11.cameras !== void 0) {
          let data12 = data11.cameras;
          if (typeof data12 === "string") {
            if (!pattern123.test(data12)) {
              const err21 = { instancePath: instancePath + "/runtime/cameras", schemaPath: "#/$defs/duration/pattern", keyword: "pattern", params: { pattern: "^(?!0+(\\.0+)? )[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" } };
              if (vErrors === null) {
                vErrors = [err21];
              } else {
                vErrors.push(err21);
              }
              errors++;
            }
          } else {
            const err22 = { instancePath: instancePath + "/runtime/cameras", schemaPath: "#/$defs/duration/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err22];
            } else {
              vErrors.push(err22);
            }
            errors++;
          }
        }
      } else {
        const err23 = { instancePath: instancePath + "/runtime", schemaPath: "#/properties/runtime/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data["aerial-system"] !== void 0) {
      let data13 = data["aerial-system"];
      if (data13 && typeof data13 == "object" && !Array.isArray(data13)) {
        for (const key5 in data13) {
          if (!(key5 === "margin" || key5 === "level-reserve" || key5 === "slope" || key5 === "outlet-level")) {
            const err24 = { instancePath: instancePath + "/aerial-system", schemaPath: "#/properties/aerial-system/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 } };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
        }
        if (data13.margin !== void 0) {
          let data14 = data13.margin;
          if (typeof data14 === "string") {
            if (!pattern47.test(data14)) {
              const err25 = { instancePath: instancePath + "/aerial-system/margin", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
            }
          } else {
            const err26 = { instancePath: instancePath + "/aerial-system/margin", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
        if (data13["level-reserve"] !== void 0) {
          let data15 = data13["level-reserve"];
          if (typeof data15 === "string") {
            if (!pattern47.test(data15)) {
              const err27 = { instancePath: instancePath + "/aerial-system/level-reserve", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
              if (vErrors === null) {
                vErrors = [err27];
              } else {
                vErrors.push(err27);
              }
              errors++;
            }
          } else {
            const err28 = { instancePath: instancePath + "/aerial-system/level-reserve", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err28];
            } else {
              vErrors.push(err28);
            }
            errors++;
          }
        }
        if (data13.slope !== void 0) {
          let data16 = data13.slope;
          if (typeof data16 === "string") {
            if (!pattern47.test(data16)) {
              const err29 = { instancePath: instancePath + "/aerial-system/slope", schemaPath: "#/$defs/ratio/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? dB$" } };
              if (vErrors === null) {
                vErrors = [err29];
              } else {
                vErrors.push(err29);
              }
              errors++;
            }
          } else {
            const err30 = { instancePath: instancePath + "/aerial-system/slope", schemaPath: "#/$defs/ratio/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err30];
            } else {
              vErrors.push(err30);
            }
            errors++;
          }
        }
        if (data13["outlet-level"] !== void 0) {
          let data17 = data13["outlet-level"];
          if (data17 && typeof data17 == "object" && !Array.isArray(data17)) {
            for (const key6 in data17) {
              const _errs52 = errors;
              if (typeof key6 !== "string") {
                const err31 = { instancePath: instancePath + "/aerial-system/outlet-level", schemaPath: "#/$defs/system/type", keyword: "type", params: { type: "string" }, propertyName: key6 };
                if (vErrors === null) {
                  vErrors = [err31];
                } else {
                  vErrors.push(err31);
                }
                errors++;
              }
              if (!(key6 === "dvb-t" || key6 === "dvb-t2" || key6 === "dvb-c" || key6 === "j83b" || key6 === "dvb-s" || key6 === "dvb-s2" || key6 === "atsc" || key6 === "isdb-t")) {
                const err32 = { instancePath: instancePath + "/aerial-system/outlet-level", schemaPath: "#/$defs/system/enum", keyword: "enum", params: { allowedValues: schema95.enum }, propertyName: key6 };
                if (vErrors === null) {
                  vErrors = [err32];
                } else {
                  vErrors.push(err32);
                }
                errors++;
              }
              var valid18 = _errs52 === errors;
              if (!valid18) {
                const err33 = { instancePath: instancePath + "/aerial-system/outlet-level", schemaPath: "#/properties/aerial-system/properties/outlet-level/propertyNames", keyword: "propertyNames", params: { propertyName: key6 } };
                if (vErrors === null) {
                  vErrors = [err33];
                } else {
                  vErrors.push(err33);
                }
                errors++;
              }
            }
            for (const key7 in data17) {
              let data18 = data17[key7];
              if (data18 && typeof data18 == "object" && !Array.isArray(data18)) {
                for (const key8 in data18) {
                  if (!(key8 === "min" || key8 === "max")) {
                    const err34 = { instancePath: instancePath + "/aerial-system/outlet-level/" + key7.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/aerial-system/properties/outlet-level/additionalProperties/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key8 } };
                    if (vErrors === null) {
                      vErrors = [err34];
                    } else {
                      vErrors.push(err34);
                    }
                    errors++;
                  }
                }
                if (data18.min !== void 0) {
                  let data19 = data18.min;
                  if (typeof data19 === "string") {
                    if (!pattern43.test(data19)) {
                      const err35 = { instancePath: instancePath + "/aerial-system/outlet-level/" + key7.replace(/~/g, "~0").replace(/\//g, "~1") + "/min", schemaPath: "#/$defs/level/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$" } };
                      if (vErrors === null) {
                        vErrors = [err35];
                      } else {
                        vErrors.push(err35);
                      }
                      errors++;
                    }
                  } else {
                    const err36 = { instancePath: instancePath + "/aerial-system/outlet-level/" + key7.replace(/~/g, "~0").replace(/\//g, "~1") + "/min", schemaPath: "#/$defs/level/type", keyword: "type", params: { type: "string" } };
                    if (vErrors === null) {
                      vErrors = [err36];
                    } else {
                      vErrors.push(err36);
                    }
                    errors++;
                  }
                }
                if (data18.max !== void 0) {
                  let data20 = data18.max;
                  if (typeof data20 === "string") {
                    if (!pattern43.test(data20)) {
                      const err37 = { instancePath: instancePath + "/aerial-system/outlet-level/" + key7.replace(/~/g, "~0").replace(/\//g, "~1") + "/max", schemaPath: "#/$defs/level/pattern", keyword: "pattern", params: { pattern: "^-?[0-9]+(\\.[0-9]+)? (dB\xB5V|dBuV|dBmV|dBm)$" } };
                      if (vErrors === null) {
                        vErrors = [err37];
                      } else {
                        vErrors.push(err37);
                      }
                      errors++;
                    }
                  } else {
                    const err38 = { instancePath: instancePath + "/aerial-system/outlet-level/" + key7.replace(/~/g, "~0").replace(/\//g, "~1") + "/max", schemaPath: "#/$defs/level/type", keyword: "type", params: { type: "string" } };
                    if (vErrors === null) {
                      vErrors = [err38];
                    } else {
                      vErrors.push(err38);
                    }
                    errors++;
                  }
                }
              } else {
                const err39 = { instancePath: instancePath + "/aerial-system/outlet-level/" + key7.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/aerial-system/properties/outlet-level/additionalProperties/type", keyword: "type", params: { type: "object" } };
                if (vErrors === null) {
                  vErrors = [err39];
                } else {
                  vErrors.push(err39);
                }
                errors++;
              }
            }
          } else {
            const err40 = { instancePath: instancePath + "/aerial-system/outlet-level", schemaPath: "#/properties/aerial-system/properties/outlet-level/type", keyword: "type", params: { type: "object" } };
            if (vErrors === null) {
              vErrors = [err40];
            } else {
              vErrors.push(err40);
            }
            errors++;
          }
        }
      } else {
        const err41 = { instancePath: instancePath + "/aerial-system", schemaPath: "#/properties/aerial-system/type", keyword: "type", params: { type: "object" } };
        if (vErrors === null) {
          vErrors = [err41];
        } else {
          vErrors.push(err41);
        }
        errors++;
      }
    }
  } else {
    const err42 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err42];
    } else {
      vErrors.push(err42);
    }
    errors++;
  }
  validate94.errors = vErrors;
  return errors === 0;
}
validate94.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var lint = validate96;
var schema202 = { "type": "object", "additionalProperties": false, "properties": { "rules": { "type": "object", "propertyNames": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "additionalProperties": { "type": "string", "enum": ["off", "hint", "information", "warning", "error"] } }, "accept": { "type": "array", "items": { "$ref": "#/$defs/acceptance" } } } };
function validate96(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate96.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "rules" || key0 === "accept")) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 } };
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
              const err1 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err1];
              } else {
                vErrors.push(err1);
              }
              errors++;
            }
          } else {
            const err2 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames/type", keyword: "type", params: { type: "string" }, propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
          var valid1 = _errs4 === errors;
          if (!valid1) {
            const err3 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames", keyword: "propertyNames", params: { propertyName: key1 } };
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
            const err4 = { instancePath: instancePath + "/rules/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/rules/additionalProperties/type", keyword: "type", params: { type: "string" } };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
          if (!(data1 === "off" || data1 === "hint" || data1 === "information" || data1 === "warning" || data1 === "error")) {
            const err5 = { instancePath: instancePath + "/rules/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/rules/additionalProperties/enum", keyword: "enum", params: { allowedValues: schema202.properties.rules.additionalProperties.enum } };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/type", keyword: "type", params: { type: "object" } };
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
              const err7 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "rule" } };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (data3.at === void 0) {
              const err8 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "at" } };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
            if (data3.because === void 0) {
              const err9 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "because" } };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
            for (const key3 in data3) {
              if (!(key3 === "rule" || key3 === "at" || key3 === "because")) {
                const err10 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 } };
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
                  const err11 = { instancePath: instancePath + "/accept/" + i0 + "/rule", schemaPath: "#/$defs/acceptance/properties/rule/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" } };
                  if (vErrors === null) {
                    vErrors = [err11];
                  } else {
                    vErrors.push(err11);
                  }
                  errors++;
                }
              } else {
                const err12 = { instancePath: instancePath + "/accept/" + i0 + "/rule", schemaPath: "#/$defs/acceptance/properties/rule/type", keyword: "type", params: { type: "string" } };
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
                  const err13 = { instancePath: instancePath + "/accept/" + i0 + "/at", schemaPath: "#/$defs/acceptance/properties/at/minLength", keyword: "minLength", params: { limit: 1 } };
                  if (vErrors === null) {
                    vErrors = [err13];
                  } else {
                    vErrors.push(err13);
                  }
                  errors++;
                }
              } else {
                const err14 = { instancePath: instancePath + "/accept/" + i0 + "/at", schemaPath: "#/$defs/acceptance/properties/at/type", keyword: "type", params: { type: "string" } };
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
                  const err15 = { instancePath: instancePath + "/accept/" + i0 + "/because", schemaPath: "#/$defs/acceptance/properties/because/minLength", keyword: "minLength", params: { limit: 1 } };
                  if (vErrors === null) {
                    vErrors = [err15];
                  } else {
                    vErrors.push(err15);
                  }
                  errors++;
                }
              } else {
                const err16 = { instancePath: instancePath + "/accept/" + i0 + "/because", schemaPath: "#/$defs/acceptance/properties/because/type", keyword: "type", params: { type: "string" } };
                if (vErrors === null) {
                  vErrors = [err16];
                } else {
                  vErrors.push(err16);
                }
                errors++;
              }
            }
          } else {
            const err17 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/type", keyword: "type", params: { type: "object" } };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
      } else {
        const err18 = { instancePath: instancePath + "/accept", schemaPath: "#/properties/accept/type", keyword: "type", params: { type: "array" } };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
  } else {
    const err19 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" } };
    if (vErrors === null) {
      vErrors = [err19];
    } else {
      vErrors.push(err19);
    }
    errors++;
  }
  validate96.errors = vErrors;
  return errors === 0;
}
validate96.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
export {
  cables,
  devices,
  lint,
  multiplexes,
  occasions,
  policies,
  racks,
  recordings,
  services,
  site,
  streams,
  traffic,
  vlans,
  volumes
};
