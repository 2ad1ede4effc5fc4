#!/usr/bin/env python3
"""Turn knowledge/rules/*.json into one C++ table.

usage: embed_rules.py KNOWLEDGE_DIR OUT_FILE

{"kind": "rules", "version", "title", "rules": [{id, standing, source, places, classes, skin, span, when, says, of?,
figures, least?, change, today}]}; a condition is words that all hold, each a fact, or fact<figure, fact>figure,
fact>=figure where the figure is one of the rule.
"""
import json
import pathlib
import re
import sys

TOPICS = ["person", "history", "classes", "wish", "bowl"]
KEYS = {"id", "standing", "source", "places", "classes", "skin", "span", "when", "says", "of", "figures", "least", "change", "today"}
WORDS = {"standing": {"law", "floor", "house"}, "says": {"stop", "ceiling", "restrict", "ask", "say"},
         "skin": {"any", "yes", "no"}, "span": {"any", "new_growth", "lengths", "packets"}}


def text(value):
    return json.dumps(value, ensure_ascii=True)


def words(values):
    return "{" + ", ".join(text(v) for v in values) + "}"


def figures(values):
    return "{" + ", ".join(f"{{{text(k)}, {float(v)!r}}}" for k, v in values.items()) + "}"


def row(rule, topic, where):
    if unknown := set(rule) - KEYS:
        sys.exit(f"{where}: unknown key {sorted(unknown)} in {rule.get('id')}")
    for key, allowed in WORDS.items():
        if rule[key] not in allowed:
            sys.exit(f"{where}: {rule['id']}: {key} {rule[key]!r} is none of {sorted(allowed)}")
    if not rule["source"]:
        sys.exit(f"{where}: {rule['id']} has no source")
    for condition in rule["when"]:
        for word in condition.split():
            if not (m := re.fullmatch(r"[a-z][a-z0-9_]*(?:(?:<|>=?)([a-z][a-z0-9_]*))?", word)):
                sys.exit(f"{where}: {rule['id']}: {word!r} is no condition")
            if m[1] and m[1] not in rule["figures"]:
                sys.exit(f"{where}: {rule['id']}: {word!r} has no figure {m[1]!r}")
    return (f"    {{{text(rule['id'])}, {text(topic)}, Standing::{rule['standing']}, {text(rule['source'])},\n     {words(rule['places'])}, "
            f"{words(rule['classes'])}, {text(rule['skin'])}, {text(rule['span'])},\n     {words(rule['when'])}, Says::{rule['says']}, "
            f"{'true' if rule.get('of') == 'wish' else 'false'}, {figures(rule['figures'])}, {figures(rule.get('least', {}))},\n     "
            f"{words(rule['change'])}, {words(rule['today'])}}},\n")


def main():
    root, out = pathlib.Path(sys.argv[1]) / "rules", pathlib.Path(sys.argv[2])
    rows, version = [], 0
    for topic in TOPICS:
        where = f"knowledge/rules/{topic}.json"
        doc = json.loads((root / f"{topic}.json").read_text(encoding="utf-8"))
        version = max(version, doc["version"])
        rows += [row(rule, topic, where) for rule in doc["rules"]]
    code = ("// Written by tools/embed_rules.py from knowledge/rules. Do not edit.\n#pragma once\n#include <vector>\n\n"
            "#include \"strandline/rules.h\"\n\nnamespace strandline {\n\n"
            f"inline constexpr int rule_table_version = {version};\n\ninline std::vector<Rule> rule_table() {{\n  return {{\n"
            + "".join(rows) + "  };\n}\n\n}  // namespace strandline\n")
    if not out.exists() or out.read_text() != code:
        out.write_text(code)


if __name__ == "__main__":
    main()
