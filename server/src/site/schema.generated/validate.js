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
var site = validate25;
var pattern4 = new RegExp("^[A-Za-z][A-Za-z0-9_+/-]*$", "u");
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
      if (typeof data.name !== "string") {
        const err1 = { instancePath: instancePath + "/name", schemaPath: "#/properties/name/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.timezone !== void 0) {
      let data1 = data.timezone;
      if (typeof data1 === "string") {
        if (!pattern4.test(data1)) {
          const err2 = { instancePath: instancePath + "/timezone", schemaPath: "#/properties/timezone/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z][A-Za-z0-9_+/-]*$" }, message: 'must match pattern "^[A-Za-z][A-Za-z0-9_+/-]*$"' };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/timezone", schemaPath: "#/properties/timezone/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err4 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
  } else {
    const err5 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err5];
    } else {
      vErrors.push(err5);
    }
    errors++;
  }
  validate25.errors = vErrors;
  return errors === 0;
}
validate25.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var vlans = validate26;
var pattern6 = new RegExp("^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}/(3[0-2]|[12]?[0-9])$", "u");
var pattern7 = new RegExp("^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}-(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$", "u");
function validate26(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate26.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.id === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "id" }, message: "must have required property 'id'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "id" || key0 === "subnet" || key0 === "gateway" || key0 === "dhcp-pool" || key0 === "querier" || key0 === "description")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.id !== void 0) {
      let data0 = data.id;
      if (!(typeof data0 == "number" && (!(data0 % 1) && !isNaN(data0)) && isFinite(data0))) {
        const err2 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      if (typeof data0 == "number" && isFinite(data0)) {
        if (data0 > 4094 || isNaN(data0)) {
          const err3 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4094 }, message: "must be <= 4094" };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data0 < 1 || isNaN(data0)) {
          const err4 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      }
    }
    if (data.subnet !== void 0) {
      let data1 = data.subnet;
      if (typeof data1 === "string") {
        if (!pattern6.test(data1)) {
          const err5 = { instancePath: instancePath + "/subnet", schemaPath: "#/properties/subnet/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}/(3[0-2]|[12]?[0-9])$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}/(3[0-2]|[12]?[0-9])$"' };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/subnet", schemaPath: "#/properties/subnet/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.gateway !== void 0) {
      if (typeof data.gateway !== "string") {
        const err7 = { instancePath: instancePath + "/gateway", schemaPath: "#/properties/gateway/type", keyword: "type", params: { type: "string" }, message: "must be string" };
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
        if (!pattern7.test(data3)) {
          const err8 = { instancePath: instancePath + "/dhcp-pool", schemaPath: "#/properties/dhcp-pool/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}-(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}-(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$"' };
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
      if (typeof data.querier !== "string") {
        const err10 = { instancePath: instancePath + "/querier", schemaPath: "#/properties/querier/type", keyword: "type", params: { type: "string" }, message: "must be string" };
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
        const err11 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate26.errors = vErrors;
  return errors === 0;
}
validate26.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var devices = validate27;
var schema33 = { "title": "Device", "description": "Anything with a network port: a switch, a router, a camera, a screen \u2026 A device without `ports` has one port, named eth.", "type": "object", "required": ["kind"], "additionalProperties": false, "properties": { "kind": { "title": "Kind", "description": "What the device is. Switches, access points and media converters forward frames; routers forward between VLANs; a patch panel holds cables; all others are hosts.", "type": "string", "enum": ["switch", "router", "access-point", "media-converter", "server", "camera", "display", "computer", "tuner", "patch-panel"], "enumDescriptions": ["Forwards frames between its ports.", "Forwards packets between the VLANs that it has an address in.", "Joins wireless devices to the wired network.", "Passes frames between copper and fibre.", "Pulls, sends and records streams.", "Sends a picture.", "Shows a picture.", "Any other computer.", "Receives television and sends it on over the network.", "Holds the ends of cables in a rack; cables run through it."], "examples": ["switch"] }, "igmp-snooping": { "title": "IGMP snooping", "description": "The switch listens to who has joined which group, and sends a group only there and to the querier. Absent or false: it floods every group to every port.", "type": "boolean", "default": false, "examples": [true] }, "unregistered-multicast": { "title": "Unregistered multicast", "description": "What a snooping switch does with a group that nobody has joined: `flood` it to every port, or `drop` it (but for the ports that lead to the querier).", "type": "string", "enum": ["flood", "drop"], "enumDescriptions": ["To every port of the VLAN.", "Only to ports that lead to the querier or a multicast router."], "default": "flood", "examples": ["flood"] }, "spanning-tree": { "title": "Spanning tree", "description": "The switch runs rapid spanning tree and cuts loops. Absent or false: a loop stays closed.", "type": "boolean", "default": false, "examples": [true] }, "spanning-tree-priority": { "title": "Spanning-tree priority", "description": "The lowest becomes the root; a multiple of 4096 from 0 to 61440.", "type": "integer", "minimum": 0, "maximum": 61440, "multipleOf": 4096, "default": 32768, "examples": [4096] }, "poe-budget": { "title": "PoE budget", "description": "The most that the switch feeds over all its ports together, from its data sheet.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? W$", "x-quantity": "power", "examples": ["130 W"] }, "multicast-routing": { "title": "Multicast routing", "description": "The router forwards multicast between its VLANs, where a receiver has joined and the TTL allows it; it also asks for memberships.", "type": "boolean", "default": false, "examples": [true] }, "ports": { "title": "Ports", "description": "The ports by name. A range such as `1-8` declares each of its numbers alike.", "type": "object", "propertyNames": { "type": "string", "pattern": "^[A-Za-z0-9_-]+$" }, "additionalProperties": { "$ref": "#/$defs/port" }, "examples": [{ "1-8": { "speed": "1 Gb/s", "vlan": "video" } }] }, "address": { "title": "Address", "description": "IPv4 address of the port, in the subnet of its VLAN and outside the DHCP pool. On a device of one port it is that port's; on a switch or access point it is the address that it is managed at. Under a range of ports it is the first one's, and the others follow.", "type": "string", "pattern": "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$", "x-form": "address", "examples": ["192.168.20.31"] }, "mac": { "title": "MAC address", "description": "Hardware address, for reservations in the DHCP server.", "type": "string", "pattern": "^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$", "x-form": "mac", "examples": ["02:00:5e:10:20:31"] }, "speed": { "title": "Speed", "description": "The fastest that the port runs. A link runs at the slower of its two ends.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["1 Gb/s", "100 Mb/s"] }, "poe": { "title": "Power over Ethernet", "description": "On a switch's port, what it can feed, as the standard's type: `af` 15.4 W, `at` 30 W, `bt` 60 W (Type 3), `bt-type-4` 90 W, all at the switch. On a powered device, its class, and what it draws at most if that is known.", "type": ["string", "object"], "additionalProperties": false, "properties": { "class": { "title": "Class", "description": "Power class of IEEE 802.3, 0 to 8; 0 is a device that does not say.", "type": "integer", "minimum": 0, "maximum": 8, "examples": [3] }, "power": { "title": "Power", "description": "The most that the device draws, at its own end of the cable.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? W$", "x-quantity": "power", "examples": ["9.5 W"] } }, "if": { "type": "string" }, "then": { "enum": ["af", "at", "bt", "bt-type-4"] }, "examples": ["at", { "class": 3 }] }, "routes": { "title": "Routes", "description": "What the device sends out of another port than its addresses and gateway say. The most specific route counts.", "type": "array", "items": { "$ref": "#/$defs/route" }, "examples": [[{ "to": "224.0.0.0/4", "port": "cams" }]] }, "model": { "title": "Model", "description": "What it is, in your own words; for papers only.", "type": "string", "examples": ["8-port switch with PoE"] }, "location": { "title": "Location", "description": "Where it is; for papers and labels.", "type": "string", "examples": ["stable loft"] }, "description": { "title": "Description", "description": "Anything worth saying about the device; shown where it is mentioned.", "type": "string", "examples": ["Put up in spring, faces the gate."] } }, "defaultSnippets": [{ "label": "camera", "description": "A camera with one port, powered over Ethernet", "body": { "kind": "camera", "address": "${1:192.168.20.31}", "speed": "${2:100 Mb/s}", "poe": { "class": "^${3:3}" } } }, { "label": "switch", "description": "A switch with access ports and a trunk", "body": { "kind": "switch", "igmp-snooping": true, "unregistered-multicast": "drop", "spanning-tree": true, "poe-budget": "${1:130 W}", "ports": { "${2:1-8}": { "speed": "1 Gb/s", "vlan": "${3:video}", "poe": "at" }, "${4:9}": { "speed": "1 Gb/s", "trunk": ["${3:video}"] } } } }, { "label": "server", "description": "A server with two network cards and its multicast route", "body": { "kind": "server", "ports": { "lan": { "speed": "1 Gb/s", "address": "${1:192.168.10.5}" }, "cams": { "speed": "1 Gb/s", "address": "${2:192.168.20.5}" } }, "routes": [{ "to": "224.0.0.0/4", "port": "cams" }] } }, { "label": "display", "description": "A screen", "body": { "kind": "display", "address": "${1:192.168.20.60}", "speed": "${2:1 Gb/s}" } }], "examples": [{ "kind": "camera", "address": "192.168.20.31", "speed": "100 Mb/s", "poe": { "class": 3 } }] };
var schema34 = { "title": "Port", "description": "A port of a device. On a switch, `vlan` makes it an access port and `trunk` a tagged one; a switch with neither on any port passes everything on as it comes.", "type": "object", "additionalProperties": false, "properties": { "speed": { "title": "Speed", "description": "The fastest that the port runs. A link runs at the slower of its two ends.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["1 Gb/s", "100 Mb/s"] }, "vlan": { "title": "VLAN", "description": "The one VLAN of an access port; its frames bear no tag.", "type": "string", "x-names": "vlans", "examples": ["video"] }, "trunk": { "title": "Trunk", "description": "The VLANs that cross the port with a tag.", "type": "array", "minItems": 1, "uniqueItems": true, "items": { "title": "VLAN", "description": "A VLAN that crosses with its tag.", "type": "string", "x-names": "vlans", "examples": ["video"] }, "examples": [["house", "video"]] }, "native": { "title": "Native VLAN", "description": "The VLAN of a trunk's frames without a tag.", "type": "string", "x-names": "vlans", "examples": ["house"] }, "address": { "title": "Address", "description": "IPv4 address of the port, in the subnet of its VLAN and outside the DHCP pool. On a device of one port it is that port's; on a switch or access point it is the address that it is managed at. Under a range of ports it is the first one's, and the others follow.", "type": "string", "pattern": "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$", "x-form": "address", "examples": ["192.168.20.31"] }, "addresses": { "title": "Addresses", "description": "Where a port carries several VLANs, the device's address in each.", "type": "object", "propertyNames": { "type": "string", "x-names": "vlans" }, "additionalProperties": { "title": "Address", "description": "IPv4 address in that VLAN.", "type": "string", "pattern": "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$", "x-form": "address", "examples": ["192.168.20.1"] }, "examples": [{ "house": "192.168.10.1", "video": "192.168.20.1" }] }, "poe": { "title": "Power over Ethernet", "description": "On a switch's port, what it can feed, as the standard's type: `af` 15.4 W, `at` 30 W, `bt` 60 W (Type 3), `bt-type-4` 90 W, all at the switch. On a powered device, its class, and what it draws at most if that is known.", "type": ["string", "object"], "additionalProperties": false, "properties": { "class": { "title": "Class", "description": "Power class of IEEE 802.3, 0 to 8; 0 is a device that does not say.", "type": "integer", "minimum": 0, "maximum": 8, "examples": [3] }, "power": { "title": "Power", "description": "The most that the device draws, at its own end of the cable.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? W$", "x-quantity": "power", "examples": ["9.5 W"] } }, "if": { "type": "string" }, "then": { "enum": ["af", "at", "bt", "bt-type-4"] }, "examples": ["at", { "class": 3 }] }, "mac": { "title": "MAC address", "description": "Hardware address, for reservations in the DHCP server.", "type": "string", "pattern": "^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$", "x-form": "mac", "examples": ["02:00:5e:10:20:31"] }, "router-port": { "title": "Router port", "description": "Set by hand as a port with a multicast router behind it: it gets every group and all reports.", "type": "boolean", "default": false, "examples": [true] }, "forward-reports": { "title": "Forward reports", "description": "Membership reports are sent out here too, though no querier was heard behind it.", "type": "boolean", "default": false, "examples": [true] }, "description": { "title": "Description", "description": "Anything worth saying about the port; shown where it is mentioned.", "type": "string", "examples": ["Put up in spring, faces the gate."] } }, "examples": [{ "speed": "1 Gb/s", "vlan": "video", "poe": "at" }] };
var func1 = Object.prototype.hasOwnProperty;
var pattern9 = new RegExp("^[0-9]+(\\.[0-9]+)? W$", "u");
var pattern5 = new RegExp("^[A-Za-z0-9_-]+$", "u");
var pattern11 = new RegExp("^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "u");
var pattern12 = new RegExp("^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$", "u");
var pattern15 = new RegExp("^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$", "u");
var pattern20 = new RegExp("^(default|(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}/(3[0-2]|[12]?[0-9]))$", "u");
function validate27(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate27.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'" };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func1.call(schema33.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties" };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.kind !== void 0) {
      let data0 = data.kind;
      if (typeof data0 !== "string") {
        const err2 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
      if (!(data0 === "switch" || data0 === "router" || data0 === "access-point" || data0 === "media-converter" || data0 === "server" || data0 === "camera" || data0 === "display" || data0 === "computer" || data0 === "tuner" || data0 === "patch-panel")) {
        const err3 = { instancePath: instancePath + "/kind", schemaPath: "#/properties/kind/enum", keyword: "enum", params: { allowedValues: schema33.properties.kind.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data["igmp-snooping"] !== void 0) {
      if (typeof data["igmp-snooping"] !== "boolean") {
        const err4 = { instancePath: instancePath + "/igmp-snooping", schemaPath: "#/properties/igmp-snooping/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data["unregistered-multicast"] !== void 0) {
      let data2 = data["unregistered-multicast"];
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/properties/unregistered-multicast/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (!(data2 === "flood" || data2 === "drop")) {
        const err6 = { instancePath: instancePath + "/unregistered-multicast", schemaPath: "#/properties/unregistered-multicast/enum", keyword: "enum", params: { allowedValues: schema33.properties["unregistered-multicast"].enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["spanning-tree"] !== void 0) {
      if (typeof data["spanning-tree"] !== "boolean") {
        const err7 = { instancePath: instancePath + "/spanning-tree", schemaPath: "#/properties/spanning-tree/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data["spanning-tree-priority"] !== void 0) {
      let data4 = data["spanning-tree-priority"];
      if (!(typeof data4 == "number" && (!(data4 % 1) && !isNaN(data4)) && isFinite(data4))) {
        const err8 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
      if (typeof data4 == "number" && isFinite(data4)) {
        if (data4 > 61440 || isNaN(data4)) {
          const err9 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/maximum", keyword: "maximum", params: { comparison: "<=", limit: 61440 }, message: "must be <= 61440" };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        if (data4 < 0 || isNaN(data4)) {
          const err10 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0" };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
        let res0;
        if (res0 = data4 / 4096, res0 !== parseInt(res0)) {
          const err11 = { instancePath: instancePath + "/spanning-tree-priority", schemaPath: "#/properties/spanning-tree-priority/multipleOf", keyword: "multipleOf", params: { multipleOf: 4096 }, message: "must be multiple of 4096" };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      }
    }
    if (data["poe-budget"] !== void 0) {
      let data5 = data["poe-budget"];
      if (typeof data5 === "string") {
        if (!pattern9.test(data5)) {
          const err12 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/properties/poe-budget/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? W$"' };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      } else {
        const err13 = { instancePath: instancePath + "/poe-budget", schemaPath: "#/properties/poe-budget/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data["multicast-routing"] !== void 0) {
      if (typeof data["multicast-routing"] !== "boolean") {
        const err14 = { instancePath: instancePath + "/multicast-routing", schemaPath: "#/properties/multicast-routing/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.ports !== void 0) {
      let data7 = data.ports;
      if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
        for (const key1 in data7) {
          const _errs18 = errors;
          if (typeof key1 === "string") {
            if (!pattern5.test(key1)) {
              const err15 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[A-Za-z0-9_-]+$" }, message: 'must match pattern "^[A-Za-z0-9_-]+$"', propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err15];
              } else {
                vErrors.push(err15);
              }
              errors++;
            }
          } else {
            const err16 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/propertyNames/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
          var valid1 = _errs18 === errors;
          if (!valid1) {
            const err17 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid" };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
        for (const key2 in data7) {
          let data8 = data7[key2];
          if (data8 && typeof data8 == "object" && !Array.isArray(data8)) {
            for (const key3 in data8) {
              if (!func1.call(schema34.properties, key3)) {
                const err18 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/port/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties" };
                if (vErrors === null) {
                  vErrors = [err18];
                } else {
                  vErrors.push(err18);
                }
                errors++;
              }
            }
            if (data8.speed !== void 0) {
              let data9 = data8.speed;
              if (typeof data9 === "string") {
                if (!pattern11.test(data9)) {
                  const err19 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/speed", schemaPath: "#/$defs/port/properties/speed/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
                  if (vErrors === null) {
                    vErrors = [err19];
                  } else {
                    vErrors.push(err19);
                  }
                  errors++;
                }
              } else {
                const err20 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/speed", schemaPath: "#/$defs/port/properties/speed/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err20];
                } else {
                  vErrors.push(err20);
                }
                errors++;
              }
            }
            if (data8.vlan !== void 0) {
              if (typeof data8.vlan !== "string") {
                const err21 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/vlan", schemaPath: "#/$defs/port/properties/vlan/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err21];
                } else {
                  vErrors.push(err21);
                }
                errors++;
              }
            }
            if (data8.trunk !== void 0) {
              let data11 = data8.trunk;
              if (Array.isArray(data11)) {
                if (data11.length < 1) {
                  const err22 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/trunk", schemaPath: "#/$defs/port/properties/trunk/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items" };
                  if (vErrors === null) {
                    vErrors = [err22];
                  } else {
                    vErrors.push(err22);
                  }
                  errors++;
                }
                const len0 = data11.length;
                for (let i0 = 0; i0 < len0; i0++) {
                  if (typeof data11[i0] !== "string") {
                    const err23 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/trunk/" + i0, schemaPath: "#/$defs/port/properties/trunk/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                    if (vErrors === null) {
                      vErrors = [err23];
                    } else {
                      vErrors.push(err23);
                    }
                    errors++;
                  }
                }
                let i1 = data11.length;
                let j0;
                if (i1 > 1) {
                  const indices0 = {};
                  for (; i1--; ) {
                    let item0 = data11[i1];
                    if (typeof item0 !== "string") {
                      continue;
                    }
                    if (typeof indices0[item0] == "number") {
                      j0 = indices0[item0];
                      const err24 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/trunk", schemaPath: "#/$defs/port/properties/trunk/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
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
                const err25 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/trunk", schemaPath: "#/$defs/port/properties/trunk/type", keyword: "type", params: { type: "array" }, message: "must be array" };
                if (vErrors === null) {
                  vErrors = [err25];
                } else {
                  vErrors.push(err25);
                }
                errors++;
              }
            }
            if (data8.native !== void 0) {
              if (typeof data8.native !== "string") {
                const err26 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/native", schemaPath: "#/$defs/port/properties/native/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err26];
                } else {
                  vErrors.push(err26);
                }
                errors++;
              }
            }
            if (data8.address !== void 0) {
              let data14 = data8.address;
              if (typeof data14 === "string") {
                if (!pattern12.test(data14)) {
                  const err27 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/address", schemaPath: "#/$defs/port/properties/address/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$"' };
                  if (vErrors === null) {
                    vErrors = [err27];
                  } else {
                    vErrors.push(err27);
                  }
                  errors++;
                }
              } else {
                const err28 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/address", schemaPath: "#/$defs/port/properties/address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err28];
                } else {
                  vErrors.push(err28);
                }
                errors++;
              }
            }
            if (data8.addresses !== void 0) {
              let data15 = data8.addresses;
              if (data15 && typeof data15 == "object" && !Array.isArray(data15)) {
                for (const key4 in data15) {
                  const _errs39 = errors;
                  if (typeof key4 !== "string") {
                    const err29 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses", schemaPath: "#/$defs/port/properties/addresses/propertyNames/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key4 };
                    if (vErrors === null) {
                      vErrors = [err29];
                    } else {
                      vErrors.push(err29);
                    }
                    errors++;
                  }
                  var valid8 = _errs39 === errors;
                  if (!valid8) {
                    const err30 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses", schemaPath: "#/$defs/port/properties/addresses/propertyNames", keyword: "propertyNames", params: { propertyName: key4 }, message: "property name must be valid" };
                    if (vErrors === null) {
                      vErrors = [err30];
                    } else {
                      vErrors.push(err30);
                    }
                    errors++;
                  }
                }
                for (const key5 in data15) {
                  let data16 = data15[key5];
                  if (typeof data16 === "string") {
                    if (!pattern12.test(data16)) {
                      const err31 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses/" + key5.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/port/properties/addresses/additionalProperties/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$"' };
                      if (vErrors === null) {
                        vErrors = [err31];
                      } else {
                        vErrors.push(err31);
                      }
                      errors++;
                    }
                  } else {
                    const err32 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses/" + key5.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/port/properties/addresses/additionalProperties/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                    if (vErrors === null) {
                      vErrors = [err32];
                    } else {
                      vErrors.push(err32);
                    }
                    errors++;
                  }
                }
              } else {
                const err33 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/addresses", schemaPath: "#/$defs/port/properties/addresses/type", keyword: "type", params: { type: "object" }, message: "must be object" };
                if (vErrors === null) {
                  vErrors = [err33];
                } else {
                  vErrors.push(err33);
                }
                errors++;
              }
            }
            if (data8.poe !== void 0) {
              let data17 = data8.poe;
              if (typeof data17 !== "string" && !(data17 && typeof data17 == "object" && !Array.isArray(data17))) {
                const err34 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe", schemaPath: "#/$defs/port/properties/poe/type", keyword: "type", params: { type: schema34.properties.poe.type }, message: "must be string,object" };
                if (vErrors === null) {
                  vErrors = [err34];
                } else {
                  vErrors.push(err34);
                }
                errors++;
              }
              const _errs46 = errors;
              let valid10 = true;
              const _errs47 = errors;
              if (typeof data17 !== "string") {
                const err35 = {};
                if (vErrors === null) {
                  vErrors = [err35];
                } else {
                  vErrors.push(err35);
                }
                errors++;
              }
              var _valid0 = _errs47 === errors;
              errors = _errs46;
              if (vErrors !== null) {
                if (_errs46) {
                  vErrors.length = _errs46;
                } else {
                  vErrors = null;
                }
              }
              if (_valid0) {
                const _errs49 = errors;
                if (!(data17 === "af" || data17 === "at" || data17 === "bt" || data17 === "bt-type-4")) {
                  const err36 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe", schemaPath: "#/$defs/port/properties/poe/then/enum", keyword: "enum", params: { allowedValues: schema34.properties.poe.then.enum }, message: "must be equal to one of the allowed values" };
                  if (vErrors === null) {
                    vErrors = [err36];
                  } else {
                    vErrors.push(err36);
                  }
                  errors++;
                }
                var _valid0 = _errs49 === errors;
                valid10 = _valid0;
              }
              if (!valid10) {
                const err37 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe", schemaPath: "#/$defs/port/properties/poe/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
                if (vErrors === null) {
                  vErrors = [err37];
                } else {
                  vErrors.push(err37);
                }
                errors++;
              }
              if (data17 && typeof data17 == "object" && !Array.isArray(data17)) {
                for (const key6 in data17) {
                  if (!(key6 === "class" || key6 === "power")) {
                    const err38 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe", schemaPath: "#/$defs/port/properties/poe/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key6 }, message: "must NOT have additional properties" };
                    if (vErrors === null) {
                      vErrors = [err38];
                    } else {
                      vErrors.push(err38);
                    }
                    errors++;
                  }
                }
                if (data17.class !== void 0) {
                  let data18 = data17.class;
                  if (!(typeof data18 == "number" && (!(data18 % 1) && !isNaN(data18)) && isFinite(data18))) {
                    const err39 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe/class", schemaPath: "#/$defs/port/properties/poe/properties/class/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
                    if (vErrors === null) {
                      vErrors = [err39];
                    } else {
                      vErrors.push(err39);
                    }
                    errors++;
                  }
                  if (typeof data18 == "number" && isFinite(data18)) {
                    if (data18 > 8 || isNaN(data18)) {
                      const err40 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe/class", schemaPath: "#/$defs/port/properties/poe/properties/class/maximum", keyword: "maximum", params: { comparison: "<=", limit: 8 }, message: "must be <= 8" };
                      if (vErrors === null) {
                        vErrors = [err40];
                      } else {
                        vErrors.push(err40);
                      }
                      errors++;
                    }
                    if (data18 < 0 || isNaN(data18)) {
                      const err41 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe/class", schemaPath: "#/$defs/port/properties/poe/properties/class/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0" };
                      if (vErrors === null) {
                        vErrors = [err41];
                      } else {
                        vErrors.push(err41);
                      }
                      errors++;
                    }
                  }
                }
                if (data17.power !== void 0) {
                  let data19 = data17.power;
                  if (typeof data19 === "string") {
                    if (!pattern9.test(data19)) {
                      const err42 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe/power", schemaPath: "#/$defs/port/properties/poe/properties/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? W$"' };
                      if (vErrors === null) {
                        vErrors = [err42];
                      } else {
                        vErrors.push(err42);
                      }
                      errors++;
                    }
                  } else {
                    const err43 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/poe/power", schemaPath: "#/$defs/port/properties/poe/properties/power/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                    if (vErrors === null) {
                      vErrors = [err43];
                    } else {
                      vErrors.push(err43);
                    }
                    errors++;
                  }
                }
              }
            }
            if (data8.mac !== void 0) {
              let data20 = data8.mac;
              if (typeof data20 === "string") {
                if (!pattern15.test(data20)) {
                  const err44 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/mac", schemaPath: "#/$defs/port/properties/mac/pattern", keyword: "pattern", params: { pattern: "^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$" }, message: 'must match pattern "^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$"' };
                  if (vErrors === null) {
                    vErrors = [err44];
                  } else {
                    vErrors.push(err44);
                  }
                  errors++;
                }
              } else {
                const err45 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/mac", schemaPath: "#/$defs/port/properties/mac/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err45];
                } else {
                  vErrors.push(err45);
                }
                errors++;
              }
            }
            if (data8["router-port"] !== void 0) {
              if (typeof data8["router-port"] !== "boolean") {
                const err46 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/router-port", schemaPath: "#/$defs/port/properties/router-port/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
                if (vErrors === null) {
                  vErrors = [err46];
                } else {
                  vErrors.push(err46);
                }
                errors++;
              }
            }
            if (data8["forward-reports"] !== void 0) {
              if (typeof data8["forward-reports"] !== "boolean") {
                const err47 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/forward-reports", schemaPath: "#/$defs/port/properties/forward-reports/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean" };
                if (vErrors === null) {
                  vErrors = [err47];
                } else {
                  vErrors.push(err47);
                }
                errors++;
              }
            }
            if (data8.description !== void 0) {
              if (typeof data8.description !== "string") {
                const err48 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1") + "/description", schemaPath: "#/$defs/port/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err48];
                } else {
                  vErrors.push(err48);
                }
                errors++;
              }
            }
          } else {
            const err49 = { instancePath: instancePath + "/ports/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/$defs/port/type", keyword: "type", params: { type: "object" }, message: "must be object" };
            if (vErrors === null) {
              vErrors = [err49];
            } else {
              vErrors.push(err49);
            }
            errors++;
          }
        }
      } else {
        const err50 = { instancePath: instancePath + "/ports", schemaPath: "#/properties/ports/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err50];
        } else {
          vErrors.push(err50);
        }
        errors++;
      }
    }
    if (data.address !== void 0) {
      let data24 = data.address;
      if (typeof data24 === "string") {
        if (!pattern12.test(data24)) {
          const err51 = { instancePath: instancePath + "/address", schemaPath: "#/properties/address/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$"' };
          if (vErrors === null) {
            vErrors = [err51];
          } else {
            vErrors.push(err51);
          }
          errors++;
        }
      } else {
        const err52 = { instancePath: instancePath + "/address", schemaPath: "#/properties/address/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err52];
        } else {
          vErrors.push(err52);
        }
        errors++;
      }
    }
    if (data.mac !== void 0) {
      let data25 = data.mac;
      if (typeof data25 === "string") {
        if (!pattern15.test(data25)) {
          const err53 = { instancePath: instancePath + "/mac", schemaPath: "#/properties/mac/pattern", keyword: "pattern", params: { pattern: "^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$" }, message: 'must match pattern "^[0-9A-Fa-f]{2}([:-][0-9A-Fa-f]{2}){5}$"' };
          if (vErrors === null) {
            vErrors = [err53];
          } else {
            vErrors.push(err53);
          }
          errors++;
        }
      } else {
        const err54 = { instancePath: instancePath + "/mac", schemaPath: "#/properties/mac/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err54];
        } else {
          vErrors.push(err54);
        }
        errors++;
      }
    }
    if (data.speed !== void 0) {
      let data26 = data.speed;
      if (typeof data26 === "string") {
        if (!pattern11.test(data26)) {
          const err55 = { instancePath: instancePath + "/speed", schemaPath: "#/properties/speed/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err55];
          } else {
            vErrors.push(err55);
          }
          errors++;
        }
      } else {
        const err56 = { instancePath: instancePath + "/speed", schemaPath: "#/properties/speed/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err56];
        } else {
          vErrors.push(err56);
        }
        errors++;
      }
    }
    if (data.poe !== void 0) {
      let data27 = data.poe;
      if (typeof data27 !== "string" && !(data27 && typeof data27 == "object" && !Array.isArray(data27))) {
        const err57 = { instancePath: instancePath + "/poe", schemaPath: "#/properties/poe/type", keyword: "type", params: { type: schema33.properties.poe.type }, message: "must be string,object" };
        if (vErrors === null) {
          vErrors = [err57];
        } else {
          vErrors.push(err57);
        }
        errors++;
      }
      const _errs71 = errors;
      let valid12 = true;
      const _errs72 = errors;
      if (typeof data27 !== "string") {
        const err58 = {};
        if (vErrors === null) {
          vErrors = [err58];
        } else {
          vErrors.push(err58);
        }
        errors++;
      }
      var _valid1 = _errs72 === errors;
      errors = _errs71;
      if (vErrors !== null) {
        if (_errs71) {
          vErrors.length = _errs71;
        } else {
          vErrors = null;
        }
      }
      if (_valid1) {
        const _errs74 = errors;
        if (!(data27 === "af" || data27 === "at" || data27 === "bt" || data27 === "bt-type-4")) {
          const err59 = { instancePath: instancePath + "/poe", schemaPath: "#/properties/poe/then/enum", keyword: "enum", params: { allowedValues: schema33.properties.poe.then.enum }, message: "must be equal to one of the allowed values" };
          if (vErrors === null) {
            vErrors = [err59];
          } else {
            vErrors.push(err59);
          }
          errors++;
        }
        var _valid1 = _errs74 === errors;
        valid12 = _valid1;
      }
      if (!valid12) {
        const err60 = { instancePath: instancePath + "/poe", schemaPath: "#/properties/poe/if", keyword: "if", params: { failingKeyword: "then" }, message: 'must match "then" schema' };
        if (vErrors === null) {
          vErrors = [err60];
        } else {
          vErrors.push(err60);
        }
        errors++;
      }
      if (data27 && typeof data27 == "object" && !Array.isArray(data27)) {
        for (const key7 in data27) {
          if (!(key7 === "class" || key7 === "power")) {
            const err61 = { instancePath: instancePath + "/poe", schemaPath: "#/properties/poe/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key7 }, message: "must NOT have additional properties" };
            if (vErrors === null) {
              vErrors = [err61];
            } else {
              vErrors.push(err61);
            }
            errors++;
          }
        }
        if (data27.class !== void 0) {
          let data28 = data27.class;
          if (!(typeof data28 == "number" && (!(data28 % 1) && !isNaN(data28)) && isFinite(data28))) {
            const err62 = { instancePath: instancePath + "/poe/class", schemaPath: "#/properties/poe/properties/class/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
            if (vErrors === null) {
              vErrors = [err62];
            } else {
              vErrors.push(err62);
            }
            errors++;
          }
          if (typeof data28 == "number" && isFinite(data28)) {
            if (data28 > 8 || isNaN(data28)) {
              const err63 = { instancePath: instancePath + "/poe/class", schemaPath: "#/properties/poe/properties/class/maximum", keyword: "maximum", params: { comparison: "<=", limit: 8 }, message: "must be <= 8" };
              if (vErrors === null) {
                vErrors = [err63];
              } else {
                vErrors.push(err63);
              }
              errors++;
            }
            if (data28 < 0 || isNaN(data28)) {
              const err64 = { instancePath: instancePath + "/poe/class", schemaPath: "#/properties/poe/properties/class/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0" };
              if (vErrors === null) {
                vErrors = [err64];
              } else {
                vErrors.push(err64);
              }
              errors++;
            }
          }
        }
        if (data27.power !== void 0) {
          let data29 = data27.power;
          if (typeof data29 === "string") {
            if (!pattern9.test(data29)) {
              const err65 = { instancePath: instancePath + "/poe/power", schemaPath: "#/properties/poe/properties/power/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? W$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? W$"' };
              if (vErrors === null) {
                vErrors = [err65];
              } else {
                vErrors.push(err65);
              }
              errors++;
            }
          } else {
            const err66 = { instancePath: instancePath + "/poe/power", schemaPath: "#/properties/poe/properties/power/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err66];
            } else {
              vErrors.push(err66);
            }
            errors++;
          }
        }
      }
    }
    if (data.routes !== void 0) {
      let data30 = data.routes;
      if (Array.isArray(data30)) {
        const len1 = data30.length;
        for (let i2 = 0; i2 < len1; i2++) {
          let data31 = data30[i2];
          if (data31 && typeof data31 == "object" && !Array.isArray(data31)) {
            if (data31.to === void 0) {
              const err67 = { instancePath: instancePath + "/routes/" + i2, schemaPath: "#/$defs/route/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'" };
              if (vErrors === null) {
                vErrors = [err67];
              } else {
                vErrors.push(err67);
              }
              errors++;
            }
            if (data31.port === void 0) {
              const err68 = { instancePath: instancePath + "/routes/" + i2, schemaPath: "#/$defs/route/required", keyword: "required", params: { missingProperty: "port" }, message: "must have required property 'port'" };
              if (vErrors === null) {
                vErrors = [err68];
              } else {
                vErrors.push(err68);
              }
              errors++;
            }
            for (const key8 in data31) {
              if (!(key8 === "to" || key8 === "port" || key8 === "via")) {
                const err69 = { instancePath: instancePath + "/routes/" + i2, schemaPath: "#/$defs/route/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key8 }, message: "must NOT have additional properties" };
                if (vErrors === null) {
                  vErrors = [err69];
                } else {
                  vErrors.push(err69);
                }
                errors++;
              }
            }
            if (data31.to !== void 0) {
              let data32 = data31.to;
              if (typeof data32 === "string") {
                if (!pattern20.test(data32)) {
                  const err70 = { instancePath: instancePath + "/routes/" + i2 + "/to", schemaPath: "#/$defs/route/properties/to/pattern", keyword: "pattern", params: { pattern: "^(default|(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}/(3[0-2]|[12]?[0-9]))$" }, message: 'must match pattern "^(default|(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}/(3[0-2]|[12]?[0-9]))$"' };
                  if (vErrors === null) {
                    vErrors = [err70];
                  } else {
                    vErrors.push(err70);
                  }
                  errors++;
                }
              } else {
                const err71 = { instancePath: instancePath + "/routes/" + i2 + "/to", schemaPath: "#/$defs/route/properties/to/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err71];
                } else {
                  vErrors.push(err71);
                }
                errors++;
              }
            }
            if (data31.port !== void 0) {
              if (typeof data31.port !== "string") {
                const err72 = { instancePath: instancePath + "/routes/" + i2 + "/port", schemaPath: "#/$defs/route/properties/port/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err72];
                } else {
                  vErrors.push(err72);
                }
                errors++;
              }
            }
            if (data31.via !== void 0) {
              let data34 = data31.via;
              if (typeof data34 === "string") {
                if (!pattern12.test(data34)) {
                  const err73 = { instancePath: instancePath + "/routes/" + i2 + "/via", schemaPath: "#/$defs/route/properties/via/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$"' };
                  if (vErrors === null) {
                    vErrors = [err73];
                  } else {
                    vErrors.push(err73);
                  }
                  errors++;
                }
              } else {
                const err74 = { instancePath: instancePath + "/routes/" + i2 + "/via", schemaPath: "#/$defs/route/properties/via/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err74];
                } else {
                  vErrors.push(err74);
                }
                errors++;
              }
            }
          } else {
            const err75 = { instancePath: instancePath + "/routes/" + i2, schemaPath: "#/$defs/route/type", keyword: "type", params: { type: "object" }, message: "must be object" };
            if (vErrors === null) {
              vErrors = [err75];
            } else {
              vErrors.push(err75);
            }
            errors++;
          }
        }
      } else {
        const err76 = { instancePath: instancePath + "/routes", schemaPath: "#/properties/routes/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err76];
        } else {
          vErrors.push(err76);
        }
        errors++;
      }
    }
    if (data.model !== void 0) {
      if (typeof data.model !== "string") {
        const err77 = { instancePath: instancePath + "/model", schemaPath: "#/properties/model/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err77];
        } else {
          vErrors.push(err77);
        }
        errors++;
      }
    }
    if (data.location !== void 0) {
      if (typeof data.location !== "string") {
        const err78 = { instancePath: instancePath + "/location", schemaPath: "#/properties/location/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err78];
        } else {
          vErrors.push(err78);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err79 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err79];
        } else {
          vErrors.push(err79);
        }
        errors++;
      }
    }
  } else {
    const err80 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err80];
    } else {
      vErrors.push(err80);
    }
    errors++;
  }
  validate27.errors = vErrors;
  return errors === 0;
}
validate27.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var cables = validate28;
var schema36 = { "title": "Cable", "description": "A cable between two ports.", "type": "object", "required": ["from", "to"], "additionalProperties": false, "properties": { "from": { "title": "From", "description": "One end: device/port, or the device alone where it has one port.", "type": "string", "x-names": "port-end", "examples": ["core/1"] }, "to": { "title": "To", "description": "The other end.", "type": "string", "x-names": "port-end", "examples": ["paddock-cam"] }, "type": { "title": "Type", "description": "Copper by its category, fibre by its class, or `dac` for a direct attach cable.", "type": "string", "enum": ["cat5", "cat5e", "cat6", "cat6a", "cat7", "cat8", "om1", "om2", "om3", "om4", "om5", "os2", "dac"], "enumDescriptions": ["Copper, 100 Mb/s and 1 Gb/s.", "Copper, to 2.5 Gb/s.", "Copper, 5 Gb/s, 10 Gb/s over short runs.", "Copper, 10 Gb/s over 100 m.", "Shielded copper, 10 Gb/s over 100 m.", "Shielded copper, 40 Gb/s over 30 m.", "Multimode fibre, 62.5 \xB5m.", "Multimode fibre, 50 \xB5m.", "Multimode fibre for lasers.", "Multimode fibre for lasers, longer reach.", "Multimode fibre for several wavelengths.", "Single-mode fibre.", "Twin-axial copper with plugs of its own, a few metres."], "examples": ["cat5"] }, "length": { "title": "Length", "description": "The whole run from port to port, patch cords included.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? m$", "x-quantity": "length", "examples": ["38 m"] }, "through": { "title": "Through", "description": "The patch-panel positions that it runs through, in order.", "type": "array", "items": { "title": "Position", "description": "panel/position.", "type": "string", "x-names": "port-end", "examples": ["panel-a/1"] }, "examples": [["panel-a/1"]] }, "label": { "title": "Label", "description": "What is written on it.", "type": "string", "examples": ["P-07"] }, "description": { "title": "Description", "description": "Anything worth saying about the cable; shown where it is mentioned.", "type": "string", "examples": ["Put up in spring, faces the gate."] } }, "examples": [{ "from": "core/1", "to": "paddock-cam", "type": "cat6", "length": "38 m" }] };
var pattern22 = new RegExp("^[0-9]+(\\.[0-9]+)? m$", "u");
function validate28(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate28.evaluated;
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
      if (typeof data.from !== "string") {
        const err3 = { instancePath: instancePath + "/from", schemaPath: "#/properties/from/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      if (typeof data.to !== "string") {
        const err4 = { instancePath: instancePath + "/to", schemaPath: "#/properties/to/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.type !== void 0) {
      let data2 = data.type;
      if (typeof data2 !== "string") {
        const err5 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (!(data2 === "cat5" || data2 === "cat5e" || data2 === "cat6" || data2 === "cat6a" || data2 === "cat7" || data2 === "cat8" || data2 === "om1" || data2 === "om2" || data2 === "om3" || data2 === "om4" || data2 === "om5" || data2 === "os2" || data2 === "dac")) {
        const err6 = { instancePath: instancePath + "/type", schemaPath: "#/properties/type/enum", keyword: "enum", params: { allowedValues: schema36.properties.type.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.length !== void 0) {
      let data3 = data.length;
      if (typeof data3 === "string") {
        if (!pattern22.test(data3)) {
          const err7 = { instancePath: instancePath + "/length", schemaPath: "#/properties/length/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? m$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? m$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/length", schemaPath: "#/properties/length/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.through !== void 0) {
      let data4 = data.through;
      if (Array.isArray(data4)) {
        const len0 = data4.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (typeof data4[i0] !== "string") {
            const err9 = { instancePath: instancePath + "/through/" + i0, schemaPath: "#/properties/through/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
      } else {
        const err10 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.label !== void 0) {
      if (typeof data.label !== "string") {
        const err11 = { instancePath: instancePath + "/label", schemaPath: "#/properties/label/type", keyword: "type", params: { type: "string" }, message: "must be string" };
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
  validate28.errors = vErrors;
  return errors === 0;
}
validate28.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var streams = validate29;
var schema37 = { "title": "Stream", "description": "Pictures and sound from one device to others: with a `group` multicast, else unicast, one copy for each receiver.", "type": "object", "required": ["source"], "additionalProperties": false, "properties": { "source": { "title": "Source", "description": "The device that sends it.", "type": "string", "x-names": "devices", "examples": ["paddock-cam"] }, "carries": { "title": "Carries", "description": "The stream that the source takes in and sends on. Video and audio are as they come, unless they are given anew here.", "type": "string", "x-names": "streams", "examples": ["paddock"] }, "transport": { "title": "Transport", "description": "How it travels.", "type": "string", "enum": ["rtsp", "rtp", "ts-udp", "ts-rtp"], "enumDescriptions": ["RTP interleaved in an RTSP connection (TCP), pulled by the receiver.", "RTP in UDP.", "MPEG transport stream in UDP.", "MPEG transport stream in RTP."], "examples": ["rtsp"] }, "port": { "title": "UDP or TCP port", "description": "The port that it is sent to, or asked for at. RTP takes an even one, and RTCP the next.", "type": "integer", "minimum": 1, "maximum": 65535, "examples": [5004] }, "group": { "title": "Group", "description": "The multicast group that it is sent to. Within a house, take 239.192.0.0/14 (RFC 2365); no two groups in use should share a MAC address.", "type": "string", "pattern": "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$", "x-form": "group", "examples": ["239.192.20.31"] }, "ttl": { "title": "TTL", "description": "How many routers it may pass, and one more.", "type": "integer", "minimum": 1, "maximum": 255, "default": 1, "examples": [4] }, "video": { "$ref": "#/$defs/video" }, "audio": { "$ref": "#/$defs/audio" }, "receivers": { "title": "Receivers", "description": "The devices that are to get the stream. A server that records its own multicast is among them.", "type": "array", "uniqueItems": true, "items": { "title": "Receiver", "description": "A device that gets the stream.", "type": "string", "x-names": "devices", "examples": ["kitchen-screen"] }, "examples": [["recorder", "kitchen-screen"]] }, "packet-size": { "title": "Packet size", "description": "Bytes of media in a packet: 1400 B where it is not given, and 1316 B (seven packets) of a transport stream.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$", "x-quantity": "size", "examples": ["1400 B"] }, "mux-rate": { "title": "Multiplex rate", "description": "The constant rate of a whole transport stream, padding included.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["8 Mb/s"] }, "egress": { "title": "Egress port", "description": "The source's port that it is meant to leave by; it is checked against the routes.", "type": "string", "x-names": "own-port", "examples": ["cams"] }, "description": { "title": "Description", "description": "Anything worth saying about the stream; shown where it is mentioned.", "type": "string", "examples": ["Put up in spring, faces the gate."] } }, "defaultSnippets": [{ "label": "from a camera", "description": "What a camera sends, pulled by the server", "body": { "source": "${1:camera}", "transport": "rtsp", "port": 554, "video": { "codec": "h264", "size": "2560x1440", "frame-rate": 20, "bitrate": "${2:6 Mb/s}", "keyframe-interval": "2 s" }, "receivers": ["${3:recorder}"] } }, { "label": "re-sent as multicast", "description": "What the server makes of another stream", "body": { "source": "${1:recorder}", "carries": "${2:stream}", "transport": "rtp", "group": "${3:239.192.20.31}", "port": 5004, "receivers": ["${4:kitchen-screen}"] } }], "examples": [{ "source": "paddock-cam", "transport": "rtsp", "port": 554, "receivers": ["recorder"] }] };
var schema38 = { "title": "Video", "description": "The picture.", "type": "object", "additionalProperties": false, "properties": { "codec": { "title": "Codec", "description": "How it is coded.", "type": "string", "enum": ["h264", "h265", "mpeg2", "mjpeg", "av1", "vp9"], "enumDescriptions": ["ITU-T H.264.", "ITU-T H.265.", "MPEG-2 video.", "A JPEG picture for each frame.", "AV1.", "VP9."], "examples": ["h264"] }, "size": { "title": "Size", "description": "Width and height in pixels.", "type": "string", "pattern": "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$", "examples": ["2560x1440"] }, "frame-rate": { "title": "Frame rate", "description": "Pictures a second.", "type": "number", "exclusiveMinimum": 0, "maximum": 1e3, "examples": [20] }, "bitrate": { "title": "Bit rate", "description": "The rate that is set, on average.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["6 Mb/s"] }, "peak-bitrate": { "title": "Peak bit rate", "description": "The most over a second, when much moves; the bit rate where it is not given.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["9 Mb/s"] }, "keyframe-interval": { "title": "Keyframe interval", "description": "Time between pictures that stand by themselves. A recording can only be cut there.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$", "x-quantity": "duration", "examples": ["2 s"] } }, "examples": [{ "codec": "h264", "bitrate": "6 Mb/s" }] };
var schema39 = { "title": "Audio", "description": "The sound.", "type": "object", "additionalProperties": false, "properties": { "codec": { "title": "Codec", "description": "How it is coded.", "type": "string", "enum": ["pcma", "pcmu", "g722", "aac", "opus", "mp2", "ac3", "l16"], "enumDescriptions": ["G.711 A-law.", "G.711 \xB5-law.", "G.722.", "AAC.", "Opus.", "MPEG audio layer II.", "AC-3.", "Not coded, 16 bits a sample."], "examples": ["pcma"] }, "bitrate": { "title": "Bit rate", "description": "The rate that is set, on average.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["64 kb/s"] }, "peak-bitrate": { "title": "Peak bit rate", "description": "The most over a second; the bit rate where it is not given.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$", "x-quantity": "bit-rate", "examples": ["96 kb/s"] }, "sample-rate": { "title": "Sample rate", "description": "Samples a second; the codec's usual one where it is not given.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$", "x-quantity": "frequency", "examples": ["48 kHz"] }, "channels": { "title": "Channels", "description": "One for mono, two for stereo.", "type": "integer", "minimum": 1, "maximum": 16, "examples": [2] } }, "examples": [{ "codec": "aac", "bitrate": "96 kb/s" }] };
var pattern25 = new RegExp("^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$", "u");
var pattern28 = new RegExp("^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$", "u");
var pattern31 = new RegExp("^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$", "u");
var pattern32 = new RegExp("^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$", "u");
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
      if (!func1.call(schema37.properties, key0)) {
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
      if (typeof data.source !== "string") {
        const err2 = { instancePath: instancePath + "/source", schemaPath: "#/properties/source/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.carries !== void 0) {
      if (typeof data.carries !== "string") {
        const err3 = { instancePath: instancePath + "/carries", schemaPath: "#/properties/carries/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.transport !== void 0) {
      let data2 = data.transport;
      if (typeof data2 !== "string") {
        const err4 = { instancePath: instancePath + "/transport", schemaPath: "#/properties/transport/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
      if (!(data2 === "rtsp" || data2 === "rtp" || data2 === "ts-udp" || data2 === "ts-rtp")) {
        const err5 = { instancePath: instancePath + "/transport", schemaPath: "#/properties/transport/enum", keyword: "enum", params: { allowedValues: schema37.properties.transport.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.port !== void 0) {
      let data3 = data.port;
      if (!(typeof data3 == "number" && (!(data3 % 1) && !isNaN(data3)) && isFinite(data3))) {
        const err6 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 > 65535 || isNaN(data3)) {
          const err7 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/maximum", keyword: "maximum", params: { comparison: "<=", limit: 65535 }, message: "must be <= 65535" };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (data3 < 1 || isNaN(data3)) {
          const err8 = { instancePath: instancePath + "/port", schemaPath: "#/properties/port/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      }
    }
    if (data.group !== void 0) {
      let data4 = data.group;
      if (typeof data4 === "string") {
        if (!pattern12.test(data4)) {
          const err9 = { instancePath: instancePath + "/group", schemaPath: "#/properties/group/pattern", keyword: "pattern", params: { pattern: "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$" }, message: 'must match pattern "^(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])(\\.(25[0-5]|2[0-4][0-9]|1[0-9][0-9]|[1-9]?[0-9])){3}$"' };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/group", schemaPath: "#/properties/group/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.ttl !== void 0) {
      let data5 = data.ttl;
      if (!(typeof data5 == "number" && (!(data5 % 1) && !isNaN(data5)) && isFinite(data5))) {
        const err11 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
      if (typeof data5 == "number" && isFinite(data5)) {
        if (data5 > 255 || isNaN(data5)) {
          const err12 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/maximum", keyword: "maximum", params: { comparison: "<=", limit: 255 }, message: "must be <= 255" };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
        if (data5 < 1 || isNaN(data5)) {
          const err13 = { instancePath: instancePath + "/ttl", schemaPath: "#/properties/ttl/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      }
    }
    if (data.video !== void 0) {
      let data6 = data.video;
      if (data6 && typeof data6 == "object" && !Array.isArray(data6)) {
        for (const key1 in data6) {
          if (!(key1 === "codec" || key1 === "size" || key1 === "frame-rate" || key1 === "bitrate" || key1 === "peak-bitrate" || key1 === "keyframe-interval")) {
            const err14 = { instancePath: instancePath + "/video", schemaPath: "#/$defs/video/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties" };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
        if (data6.codec !== void 0) {
          let data7 = data6.codec;
          if (typeof data7 !== "string") {
            const err15 = { instancePath: instancePath + "/video/codec", schemaPath: "#/$defs/video/properties/codec/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
          if (!(data7 === "h264" || data7 === "h265" || data7 === "mpeg2" || data7 === "mjpeg" || data7 === "av1" || data7 === "vp9")) {
            const err16 = { instancePath: instancePath + "/video/codec", schemaPath: "#/$defs/video/properties/codec/enum", keyword: "enum", params: { allowedValues: schema38.properties.codec.enum }, message: "must be equal to one of the allowed values" };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
        if (data6.size !== void 0) {
          let data8 = data6.size;
          if (typeof data8 === "string") {
            if (!pattern25.test(data8)) {
              const err17 = { instancePath: instancePath + "/video/size", schemaPath: "#/$defs/video/properties/size/pattern", keyword: "pattern", params: { pattern: "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$" }, message: 'must match pattern "^[1-9][0-9]{0,4}x[1-9][0-9]{0,4}$"' };
              if (vErrors === null) {
                vErrors = [err17];
              } else {
                vErrors.push(err17);
              }
              errors++;
            }
          } else {
            const err18 = { instancePath: instancePath + "/video/size", schemaPath: "#/$defs/video/properties/size/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err18];
            } else {
              vErrors.push(err18);
            }
            errors++;
          }
        }
        if (data6["frame-rate"] !== void 0) {
          let data9 = data6["frame-rate"];
          if (typeof data9 == "number" && isFinite(data9)) {
            if (data9 > 1e3 || isNaN(data9)) {
              const err19 = { instancePath: instancePath + "/video/frame-rate", schemaPath: "#/$defs/video/properties/frame-rate/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000" };
              if (vErrors === null) {
                vErrors = [err19];
              } else {
                vErrors.push(err19);
              }
              errors++;
            }
            if (data9 <= 0 || isNaN(data9)) {
              const err20 = { instancePath: instancePath + "/video/frame-rate", schemaPath: "#/$defs/video/properties/frame-rate/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0" };
              if (vErrors === null) {
                vErrors = [err20];
              } else {
                vErrors.push(err20);
              }
              errors++;
            }
          } else {
            const err21 = { instancePath: instancePath + "/video/frame-rate", schemaPath: "#/$defs/video/properties/frame-rate/type", keyword: "type", params: { type: "number" }, message: "must be number" };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
        }
        if (data6.bitrate !== void 0) {
          let data10 = data6.bitrate;
          if (typeof data10 === "string") {
            if (!pattern11.test(data10)) {
              const err22 = { instancePath: instancePath + "/video/bitrate", schemaPath: "#/$defs/video/properties/bitrate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
              if (vErrors === null) {
                vErrors = [err22];
              } else {
                vErrors.push(err22);
              }
              errors++;
            }
          } else {
            const err23 = { instancePath: instancePath + "/video/bitrate", schemaPath: "#/$defs/video/properties/bitrate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
        if (data6["peak-bitrate"] !== void 0) {
          let data11 = data6["peak-bitrate"];
          if (typeof data11 === "string") {
            if (!pattern11.test(data11)) {
              const err24 = { instancePath: instancePath + "/video/peak-bitrate", schemaPath: "#/$defs/video/properties/peak-bitrate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
              if (vErrors === null) {
                vErrors = [err24];
              } else {
                vErrors.push(err24);
              }
              errors++;
            }
          } else {
            const err25 = { instancePath: instancePath + "/video/peak-bitrate", schemaPath: "#/$defs/video/properties/peak-bitrate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err25];
            } else {
              vErrors.push(err25);
            }
            errors++;
          }
        }
        if (data6["keyframe-interval"] !== void 0) {
          let data12 = data6["keyframe-interval"];
          if (typeof data12 === "string") {
            if (!pattern28.test(data12)) {
              const err26 = { instancePath: instancePath + "/video/keyframe-interval", schemaPath: "#/$defs/video/properties/keyframe-interval/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
              if (vErrors === null) {
                vErrors = [err26];
              } else {
                vErrors.push(err26);
              }
              errors++;
            }
          } else {
            const err27 = { instancePath: instancePath + "/video/keyframe-interval", schemaPath: "#/$defs/video/properties/keyframe-interval/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err27];
            } else {
              vErrors.push(err27);
            }
            errors++;
          }
        }
      } else {
        const err28 = { instancePath: instancePath + "/video", schemaPath: "#/$defs/video/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data.audio !== void 0) {
      let data13 = data.audio;
      if (data13 && typeof data13 == "object" && !Array.isArray(data13)) {
        for (const key2 in data13) {
          if (!(key2 === "codec" || key2 === "bitrate" || key2 === "peak-bitrate" || key2 === "sample-rate" || key2 === "channels")) {
            const err29 = { instancePath: instancePath + "/audio", schemaPath: "#/$defs/audio/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties" };
            if (vErrors === null) {
              vErrors = [err29];
            } else {
              vErrors.push(err29);
            }
            errors++;
          }
        }
        if (data13.codec !== void 0) {
          let data14 = data13.codec;
          if (typeof data14 !== "string") {
            const err30 = { instancePath: instancePath + "/audio/codec", schemaPath: "#/$defs/audio/properties/codec/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err30];
            } else {
              vErrors.push(err30);
            }
            errors++;
          }
          if (!(data14 === "pcma" || data14 === "pcmu" || data14 === "g722" || data14 === "aac" || data14 === "opus" || data14 === "mp2" || data14 === "ac3" || data14 === "l16")) {
            const err31 = { instancePath: instancePath + "/audio/codec", schemaPath: "#/$defs/audio/properties/codec/enum", keyword: "enum", params: { allowedValues: schema39.properties.codec.enum }, message: "must be equal to one of the allowed values" };
            if (vErrors === null) {
              vErrors = [err31];
            } else {
              vErrors.push(err31);
            }
            errors++;
          }
        }
        if (data13.bitrate !== void 0) {
          let data15 = data13.bitrate;
          if (typeof data15 === "string") {
            if (!pattern11.test(data15)) {
              const err32 = { instancePath: instancePath + "/audio/bitrate", schemaPath: "#/$defs/audio/properties/bitrate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
              if (vErrors === null) {
                vErrors = [err32];
              } else {
                vErrors.push(err32);
              }
              errors++;
            }
          } else {
            const err33 = { instancePath: instancePath + "/audio/bitrate", schemaPath: "#/$defs/audio/properties/bitrate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err33];
            } else {
              vErrors.push(err33);
            }
            errors++;
          }
        }
        if (data13["peak-bitrate"] !== void 0) {
          let data16 = data13["peak-bitrate"];
          if (typeof data16 === "string") {
            if (!pattern11.test(data16)) {
              const err34 = { instancePath: instancePath + "/audio/peak-bitrate", schemaPath: "#/$defs/audio/properties/peak-bitrate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
              if (vErrors === null) {
                vErrors = [err34];
              } else {
                vErrors.push(err34);
              }
              errors++;
            }
          } else {
            const err35 = { instancePath: instancePath + "/audio/peak-bitrate", schemaPath: "#/$defs/audio/properties/peak-bitrate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err35];
            } else {
              vErrors.push(err35);
            }
            errors++;
          }
        }
        if (data13["sample-rate"] !== void 0) {
          let data17 = data13["sample-rate"];
          if (typeof data17 === "string") {
            if (!pattern31.test(data17)) {
              const err36 = { instancePath: instancePath + "/audio/sample-rate", schemaPath: "#/$defs/audio/properties/sample-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (Hz|kHz|MHz|GHz)$"' };
              if (vErrors === null) {
                vErrors = [err36];
              } else {
                vErrors.push(err36);
              }
              errors++;
            }
          } else {
            const err37 = { instancePath: instancePath + "/audio/sample-rate", schemaPath: "#/$defs/audio/properties/sample-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err37];
            } else {
              vErrors.push(err37);
            }
            errors++;
          }
        }
        if (data13.channels !== void 0) {
          let data18 = data13.channels;
          if (!(typeof data18 == "number" && (!(data18 % 1) && !isNaN(data18)) && isFinite(data18))) {
            const err38 = { instancePath: instancePath + "/audio/channels", schemaPath: "#/$defs/audio/properties/channels/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
            if (vErrors === null) {
              vErrors = [err38];
            } else {
              vErrors.push(err38);
            }
            errors++;
          }
          if (typeof data18 == "number" && isFinite(data18)) {
            if (data18 > 16 || isNaN(data18)) {
              const err39 = { instancePath: instancePath + "/audio/channels", schemaPath: "#/$defs/audio/properties/channels/maximum", keyword: "maximum", params: { comparison: "<=", limit: 16 }, message: "must be <= 16" };
              if (vErrors === null) {
                vErrors = [err39];
              } else {
                vErrors.push(err39);
              }
              errors++;
            }
            if (data18 < 1 || isNaN(data18)) {
              const err40 = { instancePath: instancePath + "/audio/channels", schemaPath: "#/$defs/audio/properties/channels/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
              if (vErrors === null) {
                vErrors = [err40];
              } else {
                vErrors.push(err40);
              }
              errors++;
            }
          }
        }
      } else {
        const err41 = { instancePath: instancePath + "/audio", schemaPath: "#/$defs/audio/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err41];
        } else {
          vErrors.push(err41);
        }
        errors++;
      }
    }
    if (data.receivers !== void 0) {
      let data19 = data.receivers;
      if (Array.isArray(data19)) {
        const len0 = data19.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (typeof data19[i0] !== "string") {
            const err42 = { instancePath: instancePath + "/receivers/" + i0, schemaPath: "#/properties/receivers/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err42];
            } else {
              vErrors.push(err42);
            }
            errors++;
          }
        }
        let i1 = data19.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data19[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err43 = { instancePath: instancePath + "/receivers", schemaPath: "#/properties/receivers/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)" };
              if (vErrors === null) {
                vErrors = [err43];
              } else {
                vErrors.push(err43);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err44 = { instancePath: instancePath + "/receivers", schemaPath: "#/properties/receivers/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err44];
        } else {
          vErrors.push(err44);
        }
        errors++;
      }
    }
    if (data["packet-size"] !== void 0) {
      let data21 = data["packet-size"];
      if (typeof data21 === "string") {
        if (!pattern32.test(data21)) {
          const err45 = { instancePath: instancePath + "/packet-size", schemaPath: "#/properties/packet-size/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$"' };
          if (vErrors === null) {
            vErrors = [err45];
          } else {
            vErrors.push(err45);
          }
          errors++;
        }
      } else {
        const err46 = { instancePath: instancePath + "/packet-size", schemaPath: "#/properties/packet-size/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err46];
        } else {
          vErrors.push(err46);
        }
        errors++;
      }
    }
    if (data["mux-rate"] !== void 0) {
      let data22 = data["mux-rate"];
      if (typeof data22 === "string") {
        if (!pattern11.test(data22)) {
          const err47 = { instancePath: instancePath + "/mux-rate", schemaPath: "#/properties/mux-rate/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (b|kb|Mb|Gb)/s$"' };
          if (vErrors === null) {
            vErrors = [err47];
          } else {
            vErrors.push(err47);
          }
          errors++;
        }
      } else {
        const err48 = { instancePath: instancePath + "/mux-rate", schemaPath: "#/properties/mux-rate/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err48];
        } else {
          vErrors.push(err48);
        }
        errors++;
      }
    }
    if (data.egress !== void 0) {
      if (typeof data.egress !== "string") {
        const err49 = { instancePath: instancePath + "/egress", schemaPath: "#/properties/egress/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err49];
        } else {
          vErrors.push(err49);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err50 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err50];
        } else {
          vErrors.push(err50);
        }
        errors++;
      }
    }
  } else {
    const err51 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err51];
    } else {
      vErrors.push(err51);
    }
    errors++;
  }
  validate29.errors = vErrors;
  return errors === 0;
}
validate29.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var volumes = validate30;
var schema40 = { "title": "Volume", "description": "Disk space that recordings are written to.", "type": "object", "required": ["host", "capacity"], "additionalProperties": false, "properties": { "host": { "title": "Host", "description": "The device that the disks are in.", "type": "string", "x-names": "devices", "examples": ["recorder"] }, "capacity": { "title": "Capacity", "description": "Of the whole volume, or of each disk where `disks` is given. Makers count 1 TB as 10\xB9\xB2 bytes.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$", "x-quantity": "size", "examples": ["8 TB"] }, "disks": { "title": "Disks", "description": "How many equal disks the volume is made of.", "type": "integer", "minimum": 1, "maximum": 1e3, "examples": [4] }, "redundancy": { "title": "Redundancy", "description": "How the disks make up for one that fails.", "type": "string", "enum": ["none", "mirror", "raid5", "raid6", "raid10"], "enumDescriptions": ["Not at all.", "All hold the same.", "One disk's worth of parity.", "Two disks' worth of parity.", "Stripes over mirrored pairs."], "default": "none", "examples": ["none"] }, "reserve": { "title": "Reserve", "description": "The part that is left free, for the file system and for safety.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? %$", "x-quantity": "percentage", "default": "0 %", "examples": ["5 %"] }, "sustained-write": { "title": "Sustained write", "description": "What the volume writes for hours on end.", "type": "string", "pattern": "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$", "x-quantity": "byte-rate", "examples": ["120 MB/s"] }, "description": { "title": "Description", "description": "Anything worth saying about the volume; shown where it is mentioned.", "type": "string", "examples": ["Put up in spring, faces the gate."] } }, "examples": [{ "host": "recorder", "capacity": "8 TB", "reserve": "5 %" }] };
var pattern36 = new RegExp("^[0-9]+(\\.[0-9]+)? %$", "u");
var pattern37 = new RegExp("^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$", "u");
function validate30(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate30.evaluated;
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
      if (!(key0 === "host" || key0 === "capacity" || key0 === "disks" || key0 === "redundancy" || key0 === "reserve" || key0 === "sustained-write" || key0 === "description")) {
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
      if (typeof data.host !== "string") {
        const err3 = { instancePath: instancePath + "/host", schemaPath: "#/properties/host/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.capacity !== void 0) {
      let data1 = data.capacity;
      if (typeof data1 === "string") {
        if (!pattern32.test(data1)) {
          const err4 = { instancePath: instancePath + "/capacity", schemaPath: "#/properties/capacity/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)$"' };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/capacity", schemaPath: "#/properties/capacity/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.disks !== void 0) {
      let data2 = data.disks;
      if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
        const err6 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/type", keyword: "type", params: { type: "integer" }, message: "must be integer" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
      if (typeof data2 == "number" && isFinite(data2)) {
        if (data2 > 1e3 || isNaN(data2)) {
          const err7 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000" };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (data2 < 1 || isNaN(data2)) {
          const err8 = { instancePath: instancePath + "/disks", schemaPath: "#/properties/disks/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1" };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      }
    }
    if (data.redundancy !== void 0) {
      let data3 = data.redundancy;
      if (typeof data3 !== "string") {
        const err9 = { instancePath: instancePath + "/redundancy", schemaPath: "#/properties/redundancy/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
      if (!(data3 === "none" || data3 === "mirror" || data3 === "raid5" || data3 === "raid6" || data3 === "raid10")) {
        const err10 = { instancePath: instancePath + "/redundancy", schemaPath: "#/properties/redundancy/enum", keyword: "enum", params: { allowedValues: schema40.properties.redundancy.enum }, message: "must be equal to one of the allowed values" };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
    if (data.reserve !== void 0) {
      let data4 = data.reserve;
      if (typeof data4 === "string") {
        if (!pattern36.test(data4)) {
          const err11 = { instancePath: instancePath + "/reserve", schemaPath: "#/properties/reserve/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/reserve", schemaPath: "#/properties/reserve/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data["sustained-write"] !== void 0) {
      let data5 = data["sustained-write"];
      if (typeof data5 === "string") {
        if (!pattern37.test(data5)) {
          const err13 = { instancePath: instancePath + "/sustained-write", schemaPath: "#/properties/sustained-write/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (B|kB|MB|GB|TB|KiB|MiB|GiB|TiB)/s$"' };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
      } else {
        const err14 = { instancePath: instancePath + "/sustained-write", schemaPath: "#/properties/sustained-write/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.description !== void 0) {
      if (typeof data.description !== "string") {
        const err15 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
  } else {
    const err16 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err16];
    } else {
      vErrors.push(err16);
    }
    errors++;
  }
  validate30.errors = vErrors;
  return errors === 0;
}
validate30.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var recordings = validate31;
var func5 = require_ucs2length().default;
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
      if (typeof data.stream !== "string") {
        const err3 = { instancePath: instancePath + "/stream", schemaPath: "#/properties/stream/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.volume !== void 0) {
      if (typeof data.volume !== "string") {
        const err4 = { instancePath: instancePath + "/volume", schemaPath: "#/properties/volume/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.segment !== void 0) {
      let data2 = data.segment;
      if (typeof data2 === "string") {
        if (!pattern28.test(data2)) {
          const err5 = { instancePath: instancePath + "/segment", schemaPath: "#/properties/segment/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/segment", schemaPath: "#/properties/segment/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.keep !== void 0) {
      let data3 = data.keep;
      if (typeof data3 === "string") {
        if (!pattern28.test(data3)) {
          const err7 = { instancePath: instancePath + "/keep", schemaPath: "#/properties/keep/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/keep", schemaPath: "#/properties/keep/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
    if (data.file !== void 0) {
      let data4 = data.file;
      if (typeof data4 === "string") {
        if (func5(data4) < 1) {
          const err9 = { instancePath: instancePath + "/file", schemaPath: "#/properties/file/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
      } else {
        const err10 = { instancePath: instancePath + "/file", schemaPath: "#/properties/file/type", keyword: "type", params: { type: "string" }, message: "must be string" };
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
        const err11 = { instancePath: instancePath + "/description", schemaPath: "#/properties/description/type", keyword: "type", params: { type: "string" }, message: "must be string" };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
  } else {
    const err12 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err12];
    } else {
      vErrors.push(err12);
    }
    errors++;
  }
  validate31.errors = vErrors;
  return errors === 0;
}
validate31.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var policies = validate32;
function validate32(data, { instancePath = "", parentData, parentDataProperty, rootData = data, dynamicAnchors = {} } = {}) {
  let vErrors = null;
  let errors = 0;
  const evaluated0 = validate32.evaluated;
  if (evaluated0.dynamicProps) {
    evaluated0.props = void 0;
  }
  if (evaluated0.dynamicItems) {
    evaluated0.items = void 0;
  }
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!(key0 === "link-load" || key0 === "volume-fill" || key0 === "retention")) {
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
            const err1 = { instancePath: instancePath + "/link-load", schemaPath: "#/$defs/threshold/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties" };
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
            if (!pattern36.test(data1)) {
              const err2 = { instancePath: instancePath + "/link-load/warn", schemaPath: "#/$defs/threshold/properties/warn/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err2];
              } else {
                vErrors.push(err2);
              }
              errors++;
            }
          } else {
            const err3 = { instancePath: instancePath + "/link-load/warn", schemaPath: "#/$defs/threshold/properties/warn/type", keyword: "type", params: { type: "string" }, message: "must be string" };
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
            if (!pattern36.test(data2)) {
              const err4 = { instancePath: instancePath + "/link-load/limit", schemaPath: "#/$defs/threshold/properties/limit/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          } else {
            const err5 = { instancePath: instancePath + "/link-load/limit", schemaPath: "#/$defs/threshold/properties/limit/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/link-load", schemaPath: "#/$defs/threshold/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data["volume-fill"] !== void 0) {
      let data3 = data["volume-fill"];
      if (data3 && typeof data3 == "object" && !Array.isArray(data3)) {
        for (const key2 in data3) {
          if (!(key2 === "warn" || key2 === "limit")) {
            const err7 = { instancePath: instancePath + "/volume-fill", schemaPath: "#/$defs/threshold/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties" };
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
            if (!pattern36.test(data4)) {
              const err8 = { instancePath: instancePath + "/volume-fill/warn", schemaPath: "#/$defs/threshold/properties/warn/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/volume-fill/warn", schemaPath: "#/$defs/threshold/properties/warn/type", keyword: "type", params: { type: "string" }, message: "must be string" };
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
            if (!pattern36.test(data5)) {
              const err10 = { instancePath: instancePath + "/volume-fill/limit", schemaPath: "#/$defs/threshold/properties/limit/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? %$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? %$"' };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          } else {
            const err11 = { instancePath: instancePath + "/volume-fill/limit", schemaPath: "#/$defs/threshold/properties/limit/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/volume-fill", schemaPath: "#/$defs/threshold/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.retention !== void 0) {
      let data6 = data.retention;
      if (Array.isArray(data6)) {
        const len0 = data6.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data7 = data6[i0];
          if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
            if (data7.recordings === void 0) {
              const err13 = { instancePath: instancePath + "/retention/" + i0, schemaPath: "#/$defs/retention/required", keyword: "required", params: { missingProperty: "recordings" }, message: "must have required property 'recordings'" };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
            for (const key3 in data7) {
              if (!(key3 === "recordings" || key3 === "at-least" || key3 === "at-most" || key3 === "because")) {
                const err14 = { instancePath: instancePath + "/retention/" + i0, schemaPath: "#/$defs/retention/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties" };
                if (vErrors === null) {
                  vErrors = [err14];
                } else {
                  vErrors.push(err14);
                }
                errors++;
              }
            }
            if (data7.recordings !== void 0) {
              let data8 = data7.recordings;
              if (Array.isArray(data8)) {
                if (data8.length < 1) {
                  const err15 = { instancePath: instancePath + "/retention/" + i0 + "/recordings", schemaPath: "#/$defs/retention/properties/recordings/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items" };
                  if (vErrors === null) {
                    vErrors = [err15];
                  } else {
                    vErrors.push(err15);
                  }
                  errors++;
                }
                const len1 = data8.length;
                for (let i1 = 0; i1 < len1; i1++) {
                  if (typeof data8[i1] !== "string") {
                    const err16 = { instancePath: instancePath + "/retention/" + i0 + "/recordings/" + i1, schemaPath: "#/$defs/retention/properties/recordings/items/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                    if (vErrors === null) {
                      vErrors = [err16];
                    } else {
                      vErrors.push(err16);
                    }
                    errors++;
                  }
                }
                let i2 = data8.length;
                let j0;
                if (i2 > 1) {
                  const indices0 = {};
                  for (; i2--; ) {
                    let item0 = data8[i2];
                    if (typeof item0 !== "string") {
                      continue;
                    }
                    if (typeof indices0[item0] == "number") {
                      j0 = indices0[item0];
                      const err17 = { instancePath: instancePath + "/retention/" + i0 + "/recordings", schemaPath: "#/$defs/retention/properties/recordings/uniqueItems", keyword: "uniqueItems", params: { i: i2, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i2 + " are identical)" };
                      if (vErrors === null) {
                        vErrors = [err17];
                      } else {
                        vErrors.push(err17);
                      }
                      errors++;
                      break;
                    }
                    indices0[item0] = i2;
                  }
                }
              } else {
                const err18 = { instancePath: instancePath + "/retention/" + i0 + "/recordings", schemaPath: "#/$defs/retention/properties/recordings/type", keyword: "type", params: { type: "array" }, message: "must be array" };
                if (vErrors === null) {
                  vErrors = [err18];
                } else {
                  vErrors.push(err18);
                }
                errors++;
              }
            }
            if (data7["at-least"] !== void 0) {
              let data10 = data7["at-least"];
              if (typeof data10 === "string") {
                if (!pattern28.test(data10)) {
                  const err19 = { instancePath: instancePath + "/retention/" + i0 + "/at-least", schemaPath: "#/$defs/retention/properties/at-least/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
                  if (vErrors === null) {
                    vErrors = [err19];
                  } else {
                    vErrors.push(err19);
                  }
                  errors++;
                }
              } else {
                const err20 = { instancePath: instancePath + "/retention/" + i0 + "/at-least", schemaPath: "#/$defs/retention/properties/at-least/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err20];
                } else {
                  vErrors.push(err20);
                }
                errors++;
              }
            }
            if (data7["at-most"] !== void 0) {
              let data11 = data7["at-most"];
              if (typeof data11 === "string") {
                if (!pattern28.test(data11)) {
                  const err21 = { instancePath: instancePath + "/retention/" + i0 + "/at-most", schemaPath: "#/$defs/retention/properties/at-most/pattern", keyword: "pattern", params: { pattern: "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$" }, message: 'must match pattern "^[0-9]+(\\.[0-9]+)? (ms|s|min|h|d)$"' };
                  if (vErrors === null) {
                    vErrors = [err21];
                  } else {
                    vErrors.push(err21);
                  }
                  errors++;
                }
              } else {
                const err22 = { instancePath: instancePath + "/retention/" + i0 + "/at-most", schemaPath: "#/$defs/retention/properties/at-most/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err22];
                } else {
                  vErrors.push(err22);
                }
                errors++;
              }
            }
            if (data7.because !== void 0) {
              if (typeof data7.because !== "string") {
                const err23 = { instancePath: instancePath + "/retention/" + i0 + "/because", schemaPath: "#/$defs/retention/properties/because/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err23];
                } else {
                  vErrors.push(err23);
                }
                errors++;
              }
            }
          } else {
            const err24 = { instancePath: instancePath + "/retention/" + i0, schemaPath: "#/$defs/retention/type", keyword: "type", params: { type: "object" }, message: "must be object" };
            if (vErrors === null) {
              vErrors = [err24];
            } else {
              vErrors.push(err24);
            }
            errors++;
          }
        }
      } else {
        const err25 = { instancePath: instancePath + "/retention", schemaPath: "#/properties/retention/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err25];
        } else {
          vErrors.push(err25);
        }
        errors++;
      }
    }
  } else {
    const err26 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err26];
    } else {
      vErrors.push(err26);
    }
    errors++;
  }
  validate32.errors = vErrors;
  return errors === 0;
}
validate32.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
var lint = validate33;
var schema61 = { "title": "Lint", "description": "How grave each rule is here, and what is knowingly accepted.", "type": "object", "additionalProperties": false, "properties": { "rules": { "title": "Rules", "description": "Severity by rule.", "type": "object", "propertyNames": { "type": "string", "x-names": "rules" }, "additionalProperties": { "title": "Severity", "description": "How the rule's findings are told.", "type": "string", "enum": ["off", "hint", "information", "warning", "error"], "enumDescriptions": ["Not at all.", "As a hint.", "As information.", "As a warning.", "As an error."], "examples": ["off"] }, "examples": [{ "cable-length": "off" }] }, "accept": { "title": "Accept", "description": "Findings that are known and accepted, each with a reason. One that matches nothing any more is told.", "type": "array", "items": { "$ref": "#/$defs/acceptance" }, "examples": [[{ "rule": "port-speed-mismatch", "at": "paddock-cam", "because": "the camera has a 100 Mb/s port" }]] } }, "examples": [{ "rules": { "cable-length": "off" } }] };
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
          if (typeof key1 !== "string") {
            const err1 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames/type", keyword: "type", params: { type: "string" }, message: "must be string", propertyName: key1 };
            if (vErrors === null) {
              vErrors = [err1];
            } else {
              vErrors.push(err1);
            }
            errors++;
          }
          var valid1 = _errs4 === errors;
          if (!valid1) {
            const err2 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid" };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        for (const key2 in data0) {
          let data1 = data0[key2];
          if (typeof data1 !== "string") {
            const err3 = { instancePath: instancePath + "/rules/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/rules/additionalProperties/type", keyword: "type", params: { type: "string" }, message: "must be string" };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (!(data1 === "off" || data1 === "hint" || data1 === "information" || data1 === "warning" || data1 === "error")) {
            const err4 = { instancePath: instancePath + "/rules/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/rules/additionalProperties/enum", keyword: "enum", params: { allowedValues: schema61.properties.rules.additionalProperties.enum }, message: "must be equal to one of the allowed values" };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/rules", schemaPath: "#/properties/rules/type", keyword: "type", params: { type: "object" }, message: "must be object" };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
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
              const err6 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "rule" }, message: "must have required property 'rule'" };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            if (data3.at === void 0) {
              const err7 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "at" }, message: "must have required property 'at'" };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (data3.because === void 0) {
              const err8 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/required", keyword: "required", params: { missingProperty: "because" }, message: "must have required property 'because'" };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
            for (const key3 in data3) {
              if (!(key3 === "rule" || key3 === "at" || key3 === "because")) {
                const err9 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties" };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
            }
            if (data3.rule !== void 0) {
              if (typeof data3.rule !== "string") {
                const err10 = { instancePath: instancePath + "/accept/" + i0 + "/rule", schemaPath: "#/$defs/acceptance/properties/rule/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            }
            if (data3.at !== void 0) {
              if (typeof data3.at !== "string") {
                const err11 = { instancePath: instancePath + "/accept/" + i0 + "/at", schemaPath: "#/$defs/acceptance/properties/at/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err11];
                } else {
                  vErrors.push(err11);
                }
                errors++;
              }
            }
            if (data3.because !== void 0) {
              let data6 = data3.because;
              if (typeof data6 === "string") {
                if (func5(data6) < 1) {
                  const err12 = { instancePath: instancePath + "/accept/" + i0 + "/because", schemaPath: "#/$defs/acceptance/properties/because/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters" };
                  if (vErrors === null) {
                    vErrors = [err12];
                  } else {
                    vErrors.push(err12);
                  }
                  errors++;
                }
              } else {
                const err13 = { instancePath: instancePath + "/accept/" + i0 + "/because", schemaPath: "#/$defs/acceptance/properties/because/type", keyword: "type", params: { type: "string" }, message: "must be string" };
                if (vErrors === null) {
                  vErrors = [err13];
                } else {
                  vErrors.push(err13);
                }
                errors++;
              }
            }
          } else {
            const err14 = { instancePath: instancePath + "/accept/" + i0, schemaPath: "#/$defs/acceptance/type", keyword: "type", params: { type: "object" }, message: "must be object" };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
      } else {
        const err15 = { instancePath: instancePath + "/accept", schemaPath: "#/properties/accept/type", keyword: "type", params: { type: "array" }, message: "must be array" };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
  } else {
    const err16 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object" };
    if (vErrors === null) {
      vErrors = [err16];
    } else {
      vErrors.push(err16);
    }
    errors++;
  }
  validate33.errors = vErrors;
  return errors === 0;
}
validate33.evaluated = { "props": true, "dynamicProps": false, "dynamicItems": false };
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
