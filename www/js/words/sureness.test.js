import assert from "node:assert/strict";
import { test } from "node:test";
import { numbersWith } from "./numbers.js";
import { surenessWith } from "./sureness.js";

const { sureText, wayOf } = surenessWith(numbersWith(".").numberText);

test("a figure has no more decimals than what it is sure within", () => {
  assert.equal(sureText(287.747, 22.15), "288 ±\u200922");
  assert.equal(sureText(15.395, 1.811), "15.4 ±\u20091.8");
  assert.equal(sureText(-3.255, 0.577), "−3.3 ±\u20090.6");
  assert.equal(sureText(24.456, 0.0163), "24.46 ±\u20090.02");
  assert.equal(sureText(0.8, 0.0004), "0.80 ±\u20090.01");
  assert.equal(sureText(10.04, 0), "10.0");
});

test("what rounds to nothing goes no way", () => {
  assert.equal(wayOf(-0.001, 0.0002), 0);
  assert.equal(wayOf(0.8, 0.4), 1);
  assert.equal(wayOf(-2.65, 0.6), -1);
});
