#!/usr/bin/env python3
"""Holds scenes against the JSON Schema with a validator of someone else's making.

usage: schema_check.py SOURCE_DIR

Every scene of scenes/ and the fuzzer's whole ones must pass; every one of tests/bad_scenes/structure must fail.
"""
import json
import pathlib
import sys

import jsonschema
import yaml


def with_text_keys(value):
    """YAML 1.1 makes yes, no, on, off and numbers of some keys; JSON has text keys only."""
    if isinstance(value, dict):
        return {str(key): with_text_keys(inner) for key, inner in value.items()}
    return [with_text_keys(inner) for inner in value] if isinstance(value, list) else value


def faults(validator, path):
    scene = with_text_keys(yaml.safe_load(path.read_text(encoding="utf-8")))
    return [f"{path}: {error.json_path}: {error.message[:200]}" for error in validator.iter_errors(scene)]


def main():
    source = pathlib.Path(sys.argv[1])
    schema = json.loads((source / "scenes/stowpath.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)

    whole = ["full", "plain", "skeleton", "inches"]
    good = sorted(source.glob("scenes/*.yaml")) + [source / f"tests/fuzz/corpus/scene/{name}.yaml" for name in whole]
    bad = sorted(source.glob("tests/bad_scenes/structure/*.yaml"))
    wrong = [fault for path in good for fault in faults(validator, path)]
    wrong += [f"{path}: passed, and should not" for path in bad if not faults(validator, path)]
    print("\n".join(wrong))
    print(f"{len(good)} good scenes, {len(bad)} bad ones, {len(wrong)} wrong")
    return 1 if wrong or len(bad) < 10 else 0


if __name__ == "__main__":
    sys.exit(main())
