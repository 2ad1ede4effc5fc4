#!/usr/bin/env python3
"""Turn knowledge/learning/priors.json into a C++ header.

usage: embed_learning.py KNOWLEDGE_DIR OUT_FILE

{"kind": "constants", "constants": [{key, value, sd, unit, source}]} -> struct learned::Priors, which learning alone includes.
"""
import json
import pathlib
import re
import sys


def main():
    root, out = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    doc = json.loads((root / "learning" / "priors.json").read_text(encoding="utf-8"))
    members, seen = [], set()
    for c in doc["constants"]:
        key = c["key"]
        if not re.fullmatch(r"[a-z][a-z0-9_]*", key) or key in seen or not c["unit"] or not c["source"]:
            sys.exit(f"learning/priors.json: {key!r} is malformed, there twice, or lacks unit or source")
        seen.add(key)
        members.append(f"  double {key} = {float(c['value'])!r};  // {c['unit']}\n")
    text = ("// Written by tools/embed_learning.py from knowledge/. Do not edit.\n#pragma once\n\nnamespace strandline::learned {\n\n"
            "struct Priors {\n" + "".join(members) + "};\n\n}  // namespace strandline::learned\n")
    if not out.exists() or out.read_text() != text:
        out.write_text(text)


if __name__ == "__main__":
    main()
