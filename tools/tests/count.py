"""Runs the tests of this folder and prints "passed failed"."""
import pathlib
import unittest

result = unittest.TextTestRunner().run(unittest.defaultTestLoader.discover(str(pathlib.Path(__file__).parent)))
bad = len(result.failures) + len(result.errors)
print(result.testsRun - bad, bad)
