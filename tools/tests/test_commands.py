"""The counting of tests and the joining of scoreboards: what they accept and what they must refuse."""
import json
import pathlib
import subprocess
import sys
import tempfile
import unittest

TOOLS = pathlib.Path(__file__).resolve().parent.parent


class Folder(unittest.TestCase):
    def setUp(self):
        holder = tempfile.TemporaryDirectory()
        self.addCleanup(holder.cleanup)
        self.folder = pathlib.Path(holder.name)

    def write(self, name, content, mode=0o644):
        path = self.folder / name
        path.write_text(content, encoding="utf-8")
        path.chmod(mode)
        return path


class CountTests(Folder):
    def count(self, kind, path):
        return subprocess.check_output([sys.executable, TOOLS / "parts/count_tests", kind, path], text=True).strip()

    def junit(self, **statuses):
        cases = "".join(f'<testcase name="{name}" status="{status}"/>' for name, status in statuses.items())
        self.write("ctest.junit", f"<testsuite>{cases}</testsuite>")

    def test_ctest_adds_up_the_programs(self):
        self.junit(a="run", script="run", b="fail")
        self.write("a.xml", '<testsuites tests="7" disabled="1" failures="0" errors="0"/>')
        self.write("b.xml", '<testsuites tests="5" disabled="0" failures="2" errors="0"/>')
        self.assertEqual(self.count("ctest", self.folder), "10 2")

    def test_ctest_program_that_died_without_report(self):
        self.junit(a="fail")
        self.assertEqual(self.count("ctest", self.folder), "0 1")

    def test_ctest_program_that_failed_after_its_last_test(self):
        self.junit(a="fail")
        self.write("a.xml", '<testsuites tests="3" disabled="0" failures="0" errors="0"/>')
        self.assertEqual(self.count("ctest", self.folder), "2 1")

    def test_vitest_counts_a_file_that_could_not_load(self):
        report = {"numPassedTests": 4, "numFailedTests": 1, "testResults": [
            {"status": "failed", "assertionResults": []}, {"status": "failed", "assertionResults": [{}]}]}
        self.assertEqual(self.count("vitest", self.write("r.json", json.dumps(report))), "4 2")

    def test_playwright_counts_flaky_as_failed(self):
        report = {"stats": {"expected": 3, "unexpected": 1, "flaky": 1, "skipped": 0}}
        self.assertEqual(self.count("playwright", self.write("r.json", json.dumps(report))), "3 2")


class Scoreboards(Folder):
    row = {"key": "predict.ns", "value": 41.5, "unit": "ns", "note": "one zone"}

    def program(self, name, rows, end=0):
        self.write(name, f"#!/bin/sh\ncat <<'END'\n{json.dumps(rows)}\nEND\nexit {end}\n", 0o755)

    def bench(self, *arguments):
        folders = f"{self.folder}/none:{self.folder}"
        done = subprocess.run([sys.executable, TOOLS / "run_scoreboards", folders, *arguments], capture_output=True, text=True)
        return done.returncode, done.stdout

    def test_joins_rows(self):
        self.program("score_a", [self.row])
        self.program("score_b", [{**self.row, "key": "plan.ms"}])
        code, output = self.bench("--json")
        self.assertEqual((code, [row["key"] for row in json.loads(output)]), (0, ["predict.ns", "plan.ms"]))
        self.assertEqual(len(json.loads(self.bench("--json", "score_b")[1])), 1)
        self.assertIn("41.5", self.bench()[1])

    def test_refuses(self):
        self.assertEqual(self.bench("--json")[0], 1, "no scoreboard")
        self.program("score_a", [self.row], end=3)
        self.assertEqual(self.bench("--json")[0], 1, "a program that failed")
        self.program("score_a", [{"key": "x"}])
        self.assertEqual(self.bench("--json")[0], 1, "not a row")
        self.program("score_a", [self.row, self.row])
        self.assertEqual(self.bench("--json")[0], 1, "a key twice")


if __name__ == "__main__":
    unittest.main()
