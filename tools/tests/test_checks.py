"""Each check passes on a small good tree and fails on each small bad one."""
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

TOOLS = pathlib.Path(__file__).resolve().parent.parent


def run(check, files):
    """Runs a check on a tree of these files; returns its exit code and what it printed."""
    with tempfile.TemporaryDirectory() as folder:
        for name, content in files.items():
            path = pathlib.Path(folder) / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(content, encoding="utf-8")
        done = subprocess.run([sys.executable, TOOLS / check, folder], capture_output=True, text=True)
    return done.returncode, done.stdout + done.stderr


class Case(unittest.TestCase):
    check = ""

    def passes(self, files):
        code, output = run(self.check, files)
        self.assertEqual(code, 0, output)

    def fails(self, files, *said):
        code, output = run(self.check, files)
        self.assertEqual(code, 1, output)
        for words in said:
            self.assertIn(words, output)


class Layers(Case):
    check = "check_layers"
    good = {
        "engine/include/strandline/a.h": "#include <vector>\n",
        "engine/src/a.cpp": '#include "strandline/a.h"\n#include <Eigen/Core>\n// fopen and steady_clock in a comment\n#include <cstdio>\nsnprintf(t, 9, "x");\n',
        "store/store.h": "#include <string>\n",
        "salon/use.cpp": '#include "strandline/a.h"\n#include "store/store.h"\n',
        "engine/tests/a_test.cpp": '#include <fstream>\n#include "store/store.h"\n',
        "web/src/api/client.ts": "export const get = () => fetch('/api');\n",
        "web/src/features/aim/index.ts": "import { get } from '../../api/client';\n",
        "web/src/features/clock/a.ts": "import { x } from '../aim';\nprefetch('a'); // fetch(\n",
    }

    def bad(self, path, content, *said):
        self.fails({**self.good, path: content}, path, *said)

    def test_good_tree(self):
        self.passes(self.good)

    def test_empty_tree(self):
        self.fails({"README.md": ""}, "nothing to look at")

    def test_arrow_against(self):
        self.bad("store/b.cpp", '#include "strandline/a.h"\n', "store may only use")
        self.bad("engine/src/b.cpp", '#include "store/store.h"\n', "engine may only use")
        self.bad("server/b.cpp", '#include "store/store.h"\n', "server may only use")

    def test_floors_of_the_engine(self):
        floors = {**self.good, "engine/src/mix/m.h": "", "engine/src/search/s.cpp": '#include "mix/m.h"\n'}
        self.passes(floors)
        self.fails({**floors, "engine/src/hair/h.cpp": '#include "mix/m.h"\n'}, "engine/src/hair/h.cpp", "hair is not above mix")
        self.fails({**floors, "engine/src/attic/a.cpp": '#include "mix/m.h"\n'}, "no floor")

    def test_one_type_of_a_name(self):
        found = "namespace strandline {\nstruct Found {\n  struct Inner {};\n};\n}\n"
        self.passes({**self.good, "engine/src/mix/a.h": found, "store/b.h": found,
                     "engine/src/mix/c.h": "namespace strandline::other {\nstruct Found {};\nclass Inner;\n}\n"})
        self.fails({**self.good, "engine/src/mix/a.h": found, "engine/src/mix/b.h": found}, "engine/src/mix/b.h",
                   "strandline::Found is a type of engine/src/mix/a.h already")

    def test_test_header_in_product(self):
        self.fails({**self.good, "engine/tests/help.h": "", "engine/src/b.cpp": '#include "tests/help.h"\n'}, "nothing may use a test")

    def test_simulated_truth_is_apart(self):
        self.passes({**self.good, "engine/src/evidence/truth_x.cpp": '#include "strandline/colour.h"\n',
                     "engine/include/strandline/colour.h": ""})
        self.bad("engine/src/evidence/truth_x.cpp", '#include "strandline/a.h"\n', "simulated truth")
        self.bad("engine/src/evidence/truth.h", '#include "predict/view.h"\n', "simulated truth")

    def test_impure_engine(self):
        for header in ("fstream", "thread", "filesystem", "nlohmann/json.hpp", "unistd.h", "sys/socket.h"):
            self.bad("engine/src/b.cpp", f"#include <{header}>\n", header)
        for code in ("auto t = std::chrono::steady_clock::now();", "std::random_device d;", 'getenv("X");', 'std::printf("x");'):
            self.bad("engine/src/b.cpp", code, "touches nothing")

    def test_doors(self):
        self.bad("salon/b.cpp", "#include <sqlite3.h>\n", "belongs to store")
        self.bad("cli/b.cpp", "#include <httplib.h>\n", "belongs to server")

    def test_link_against(self):
        self.bad("store/CMakeLists.txt", "target_link_libraries(strandline_store PUBLIC strandline_engine)\n", "links engine")

    def test_web(self):
        self.bad("web/src/features/clock/b.ts", "const r = await fetch('/api/x');\n", "network")
        self.bad("web/src/ui/B.svelte", "<script>new WebSocket('x')</script>\n", "network")
        self.bad("web/src/features/clock/b.ts", "import type { T } from '../aim/inner';\n", "inside of feature aim")
        self.bad("web/src/ui/b.ts", "import x from '../../../wire/x';\n", "outside web/")


class Tests(Case):
    check = "check_tests"
    good = {
        "engine/CMakeLists.txt": "strandline_tests(engine_tests ${CMAKE_CURRENT_SOURCE_DIR}/tests strandline_engine)\n",
        "engine/src/colour/lab.cpp": "",
        "engine/tests/colour/lab_test.cpp": "TEST(Lab, Works) {}\n",
        "web/vite.config.ts": "test: { include: ['src/**/*.test.ts'] }\n",
        "web/src/ui/a.test.ts": "it('adds', () => {});\n",
    }

    def bad(self, path, content, *said):
        self.fails({**self.good, path: content}, path, *said)

    def test_good_tree(self):
        self.passes(self.good)

    def test_unbuilt(self):
        self.bad("salon/tests/a_test.cpp", "TEST(A, B) {}\n", "no folder")
        self.bad("engine/tests/a_tests.cpp", "TEST(A, B) {}\n", "not called")

    def test_no_mirror(self):
        code, output = run(self.check, {**self.good, "engine/src/hair/fibre.cpp": ""})
        self.assertEqual((code, "engine/src/hair" in output), (1, True))

    def test_web_not_picked_up(self):
        self.bad("web/tools/a.test.ts", "it('a', () => {});\n", "include list")
        self.bad("web/src/a.spec.ts", "it('a', () => {});\n", "include list")

    def test_switched_off_or_empty(self):
        self.bad("engine/tests/colour/b_test.cpp", "TEST(A, DISABLED_B) {}\n", "switches a test off")
        self.bad("web/src/b.test.ts", "it.only('a', () => {});\n", "switches a test off")
        self.bad("web/src/b.test.ts", "export {};\n", "holds no test")


class Sizes(Case):
    check = "check_sizes"

    def test_limit(self):
        self.passes({"a.cpp": "x\n" * 500})
        self.fails({"a.cpp": "x\n" * 501}, "501 lines")
        self.fails({"tool": "#!/usr/bin/env bash\n" + "x\n" * 500}, "501 lines")


class Sources(Case):
    check = "check_sources"
    constant = {"key": "k", "value": 1.5, "sd": 0.1, "unit": "1", "source": "prior: guess"}
    table = {"kind": "table", "name": "t", "title": "T", "unit": "1", "source": "S 2000", "columns": ["a"], "rows": [[1]]}

    def doc(self, **changed):
        entry = {k: v for k, v in {**self.constant, **changed}.items() if v is not None}
        return {"knowledge/a.json": json.dumps({"kind": "constants", "title": "T", "constants": [entry]})}

    def test_good(self):
        self.passes(self.doc())
        self.passes(self.doc(sd=0, source="by definition"))
        self.passes(self.doc(sd=0, key="reading_sd"))
        self.passes({"knowledge/t.json": json.dumps(self.table)})
        self.passes({"knowledge/demo/s.json": json.dumps({"kind": "shelf", "invented": True})})

    def test_constants(self):
        for key in ("key", "value", "sd", "unit", "source"):
            self.fails(self.doc(**{key: None}))
        self.fails(self.doc(sd=0), "prior without spread")
        self.fails(self.doc(value="1"), "no number")
        self.fails(self.doc(unit=" "), "lacks unit")

    def test_table(self):
        for key in self.table:
            self.fails({"knowledge/t.json": json.dumps({k: v for k, v in self.table.items() if k != key})})
        self.fails({"knowledge/t.json": json.dumps({**self.table, "rows": [[1, 2]]})}, "row 1")

    def test_other(self):
        self.fails({"knowledge/s.json": json.dumps({"kind": "shelf"})}, "neither")
        self.fails({"knowledge/s.json": "{"}, "not JSON")


class Words(Case):
    check = "check_words"

    def test_ordinary_words_pass(self):
        self.passes({"a.md": "The login session ends; a session cookie; ./work/plan; https://example.org/work/\n"})

    def test_words(self):
        for line in ("as agreed in this " "session", "see /work" "/main/x", "cp /tmp" "/scratch/a b", "../sha" "red/facts", "the seed document",
                     '"resolved": "https://registry.npm' 'js.org/a"', "deb http://deb.deb" "ian.org/debian", "// TODO later"):
            self.fails({"a.md": line + "\n"}, "a.md:1")


if __name__ == "__main__":
    unittest.main()
