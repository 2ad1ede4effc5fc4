#!/usr/bin/env python3
"""Turn the physics files of knowledge/ into two C++ headers.

usage: embed_knowledge.py KNOWLEDGE_DIR OUT_DIR

{"kind": "table", "name", "unit", "source", "columns", "rows"}  -> tables.h:    constexpr arrays of doubles
{"kind": "constants", "constants": [{key, value, sd, unit, source, spread?}]} -> constants.h: struct Constants with
one member per key and a list that says unit, source and spread ("normal" by default, "log" = sd of the logarithm);
"doubt": false = its spread does not vary the scenarios (it cancels where appearance is what was read).
{"kind": "correlation", "keys", "rows"} (at most one) -> constants.h: the Cholesky factor of the correlation matrix of these constants.
Other kinds (policy, shelf, law, demo) are read elsewhere and skipped here.
"""
import json
import math
import pathlib
import re
import sys

FOLDERS = "observers illuminants pigments fibre levels lightening uptake fade growth doubt loss amounts condition rules published".split()


def quoted(text):
    return json.dumps(text, ensure_ascii=True)


def number(value, where):
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        sys.exit(f"{where}: {value!r} is not a number")
    return repr(float(value))


def table(doc, where):
    columns, rows = doc["columns"], doc["rows"]
    for row in rows:
        if len(row) != len(columns):
            sys.exit(f"{where}: a row of {len(row)} numbers under {len(columns)} columns")
    body = ",\n".join("    {{" + ", ".join(number(v, where) for v in row) + "}}" for row in rows)
    return (f"// {doc['title']} [{doc['unit']}]. Columns: {', '.join(columns)}. Source: {doc['source']}\n"
            f"inline constexpr std::array<std::array<double, {len(columns)}>, {len(rows)}> {doc['name']} = {{{{\n{body}}}}};\n")


def cholesky(rows, where):
    """Lower factor of a symmetric positive definite matrix with ones on its diagonal."""
    n = len(rows)
    factor = [[0.0] * n for _ in range(n)]
    for i in range(n):
        if len(rows[i]) != n or rows[i][i] != 1 or any(rows[i][j] != rows[j][i] for j in range(i)):
            sys.exit(f"{where}: row {i} is not that of a symmetric matrix with ones on its diagonal")
        for j in range(i + 1):
            left = rows[i][j] - sum(factor[i][k] * factor[j][k] for k in range(j))
            if i == j and left <= 0:
                sys.exit(f"{where}: the matrix is not positive definite")
            factor[i][j] = math.sqrt(left) if i == j else left / factor[j][j]
    return factor


def correlation(keys, rows, where):
    members = ", ".join(f"&Constants::{key}" for key in keys)
    body = ",\n".join("    {{" + ", ".join(number(v, where) for v in row) + "}}" for row in cholesky(rows, where))
    n = len(keys)
    return ("// Constants that lean on each other, and the lower Cholesky factor of their correlation.\n"
            f"inline constexpr std::array<double Constants::*, {n}> correlated_constants = {{{members}}};\n"
            f"inline constexpr std::array<std::array<double, {n}>, {n}> correlation_factor = {{{{\n{body}}}}};\n\n")


def main():
    root, out = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
    tables, members, infos, seen, joint = [], [], [], {}, correlation([], [], "")
    # The cells of common practice, those the fit was held to and those it was not, are rows of evidence too.
    for paths in [sorted((root / folder).glob("*.json")) for folder in FOLDERS] + [[root / "calibration" / name for name in ("practice.json", "practice_held_back.json")]]:
        for path in paths:
            where = str(path.relative_to(root))
            doc = json.loads(path.read_text(encoding="utf-8"))
            if doc.get("kind") == "table":
                tables.append(table(doc, where))
            elif doc.get("kind") == "correlation":
                joint = correlation(doc["keys"], doc["rows"], where)
            elif doc.get("kind") == "constants":
                for c in doc["constants"]:
                    key = c["key"]
                    if not re.fullmatch(r"[a-z][a-z0-9_]*", key) or key in seen:
                        sys.exit(f"{where}: key {key!r} is malformed or already in {seen.get(key)}")
                    seen[key] = where
                    members.append(f"  double {key} = {number(c['value'], where)};  // {c['unit']}\n")
                    infos.append(f"    {{{quoted(key)}, &Constants::{key}, {number(c['value'], where)}, {number(c['sd'], where)}, "
                                 f"{'true' if c.get('spread') == 'log' else 'false'}, {'true' if c.get('doubt', c['sd'] > 0) else 'false'}, {quoted(c['unit'])}, {quoted(c['source'])}, "
                                 f"{quoted('knowledge/' + where)}}},\n")
    head = "// Written by tools/embed_knowledge.py from knowledge/. Do not edit.\n#pragma once\n#include <array>\n\n"
    out.mkdir(parents=True, exist_ok=True)
    write(out / "tables.h", head + "namespace strandline::tables {\n\n" + "\n".join(tables) + "\n}  // namespace strandline::tables\n")
    write(out / "constants.h", head + "namespace strandline {\n\nstruct Constants {\n" + "".join(members) + "};\n\n"
          "struct ConstantInfo {\n  const char* key;\n  double Constants::*member;\n  double value, sd;\n"
          "  bool log_spread;  // sd is that of the natural logarithm\n  bool doubt;       // varied from scenario to scenario\n  const char *unit, *source, *file;\n};\n\n"
          f"inline constexpr std::array<ConstantInfo, {len(infos)}> constant_infos = {{{{\n" + "".join(infos) + "}};\n\n" + joint +
          "}  // namespace strandline\n")


def write(path, text):
    if not path.exists() or path.read_text() != text:
        path.write_text(text)


if __name__ == "__main__":
    main()
