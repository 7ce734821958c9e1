#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Whether a test notices each formula of core going wrong.

    run.py [--only REGEX] [--every N] [--jobs N] [--seconds N]

Builds a copy of the project under build/mutation in which one operator of each formula can be switched
(instrument.py), sees which test walks through which, and runs for each mutant the tests that meet it until one fails
or they took --seconds: first what noticed another of that file, then those of its room, the quickest first. A test
that takes more than ten times its time has failed too. What no test noticed is listed in
build/mutation/survivors.tsv, what none meets with the word "unmet". May be stopped and begun again: what is decided
stays (results.tsv), unless core has changed; after a change of the tests what was not noticed is asked again. Needs
python3-clang, ccache does it good; a whole run takes hours.
"""
import argparse
import collections
import concurrent.futures
import glob
import hashlib
import json
import os
import re
import subprocess
import sys
import tempfile
import threading
import time

root = os.path.realpath(os.path.join(os.path.dirname(__file__), "..", ".."))
copy = os.path.join(root, "build", "mutation")
build = os.path.join(copy, "build")
dropped = os.path.join(copy, "dropped.txt")


def say(text):
    print(text, file=sys.stderr, flush=True)


def digestOf(*folders):
    total = hashlib.sha256()
    for folder in folders:
        for name in sorted(glob.glob(os.path.join(root, folder, "**", "*"), recursive=True)):
            if os.path.isfile(name):
                with open(name, "rb") as file:
                    total.update(f"{os.path.relpath(name, root)}\n".encode() + hashlib.sha256(file.read()).digest())
    return total.hexdigest()


def forget():
    """What was found out about another core is worth nothing, what other tests did not notice is asked again."""
    known = os.path.join(copy, "digests.json")
    digests = {"core": digestOf("core", "tests/mutation"), "tests": digestOf("tests", "app", "samples")}
    before = {}
    if os.path.exists(known):
        with open(known, encoding="utf-8") as file:
            before = json.load(file)
    old = [] if before == digests else ["walks.json"]
    if before.get("core") != digests["core"]:
        old += ["found.pickle", "dropped.txt", "mutants.tsv", "results.tsv"]
    for name in old:
        if os.path.exists(os.path.join(copy, name)):
            os.remove(os.path.join(copy, name))
    results = os.path.join(copy, "results.tsv")
    if old and os.path.exists(results):
        with open(results, encoding="utf-8") as file:
            noticed = [line for line in file if "\tnoticed " in line]
        with open(results, "w", encoding="utf-8") as file:
            file.writelines(noticed)
    with open(known, "w", encoding="utf-8") as file:
        json.dump(digests, file)


def instrumented():
    listed = os.path.join(root, "build", "mutation-list")
    subprocess.run(["cmake", "--preset", "core-only", "-DSTILLBAY_MERGE=OFF", "-B", listed], cwd=root, check=True,
                   stdout=subprocess.DEVNULL)
    here = os.path.dirname(os.path.realpath(__file__))
    os.makedirs(copy, exist_ok=True)
    forget()
    open(dropped, "a", encoding="utf-8").close()
    for _ in range(10):
        subprocess.run(["/usr/bin/python3", os.path.join(here, "instrument.py"), root, copy,
                        os.path.join(listed, "compile_commands.json"), dropped], check=True)
        subprocess.run(["cmake", "--preset", "core-only", "-DSTILLBAY_WERROR=OFF", "-B", build, *launcher()], cwd=copy,
                       check=True, stdout=subprocess.DEVNULL)
        built = subprocess.run(["cmake", "--build", build, "--", "-k", "0"], cwd=copy, text=True, capture_output=True,
                               check=False)
        if built.returncode == 0:
            return
        wrong = set(re.findall(r"(core/\w+/\w+\.\w+):(\d+):\d+: error", built.stdout))
        wrong |= set(re.findall(r"(core/\w+/\w+\.\w+):(\d+):\d+:\s+required from here", built.stdout))
        if not wrong:
            sys.exit(built.stdout[-4000:])
        say(f"{len(wrong)} lines cannot be switched")
        with open(dropped, "a", encoding="utf-8") as file:
            file.writelines(f"{name}\t{line}\n" for name, line in sorted(wrong))
    sys.exit("mutation: still does not compile")


def launcher():
    found = subprocess.run(["which", "ccache"], capture_output=True, check=False).returncode == 0
    return ["-DCMAKE_CXX_COMPILER_LAUNCHER=ccache"] if found else []


class Test:
    def __init__(self, entry):
        self.name = entry["name"]
        self.command = entry["command"]
        properties = {p["name"]: p["value"] for p in entry.get("properties", [])}
        self.folder = properties.get("WORKING_DIRECTORY", build)
        self.environment = dict(e.split("=", 1) for e in properties.get("ENVIRONMENT", []))
        self.labels = properties.get("LABELS", [])
        self.seconds = 0.0
        self.met = set()

    def isOf(self, room):
        return os.path.basename(self.command[0]).startswith(room)

    def ending(self, patience, **more):
        """Its exit code, none where it took too long; in a session of its own, so that its children end with it."""
        home = tempfile.mkdtemp(prefix="mutant")
        environment = dict(os.environ, **self.environment, HOME=home, TMPDIR=home, LC_ALL="C.UTF-8", RC_PARAMS="seed=1", **more)
        process = subprocess.Popen(self.command, cwd=self.folder, env=environment, stdout=subprocess.DEVNULL,
                                   stderr=subprocess.DEVNULL, stdin=subprocess.DEVNULL, start_new_session=True)
        try:
            return process.wait(patience)
        except subprocess.TimeoutExpired:
            return None
        finally:
            try:
                os.killpg(process.pid, 9)
            except ProcessLookupError:
                pass
            process.wait()
            subprocess.run(["rm", "-rf", home], check=False)


def listedTests():
    answer = subprocess.run(["ctest", "--test-dir", build, "--show-only=json-v1"], capture_output=True, text=True,
                            check=True).stdout
    tests = [Test(entry) for entry in json.loads(answer)["tests"] if "command" in entry]
    return [t for t in tests if "core" in t.labels]


def walk(tests, jobs):
    """Each test once as it is: how long it takes, and which mutants it meets."""
    known = os.path.join(copy, "walks.json")
    walks = {}
    if os.path.exists(known):
        with open(known, encoding="utf-8") as file:
            walks = json.load(file)

    def one(test):
        if test.name not in walks:
            folder = tempfile.mkdtemp(prefix="met")
            began = time.monotonic()
            isGood = test.ending(600, STILLBAY_MUTANTS_MET=os.path.join(folder, "met")) == 0
            seconds = time.monotonic() - began
            met = set()
            for name in glob.glob(os.path.join(folder, "met.*")):
                with open(name, encoding="utf-8") as file:
                    met |= {int(line) for line in file}
            subprocess.run(["rm", "-rf", folder], check=False)
            walks[test.name] = [seconds, sorted(met), isGood]
        test.seconds, met, isGood = walks[test.name]
        test.met = set(met)
        if not isGood:
            say(f"fails without a mutant, so it is left out: {test.name}")
            test.met = set()

    with concurrent.futures.ThreadPoolExecutor(jobs) as pool:
        list(pool.map(one, tests))
    with open(known, "w", encoding="utf-8") as file:
        json.dump(walks, file)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("--only", default="", help="mutants of files whose names match")
    parser.add_argument("--every", type=int, default=1, help="only each Nth")
    parser.add_argument("--jobs", type=int, default=os.cpu_count())
    parser.add_argument("--seconds", type=float, default=300, help="of tests for one mutant")
    parser.add_argument("--built", action="store_true", help="take what is built")
    asked = parser.parse_args()
    if not asked.built:
        instrumented()
    tests = listedTests()
    walk(tests, asked.jobs)
    tests.sort(key=lambda t: t.seconds)
    meeting = collections.defaultdict(list)
    for test in tests:
        for number in test.met:
            meeting[number].append(test)
    results = os.path.join(copy, "results.tsv")
    decided = {}
    if os.path.exists(results):
        with open(results, encoding="utf-8") as file:
            decided = {line.split("\t")[0]: line.rstrip("\n").split("\t") for line in file}
    with open(os.path.join(copy, "mutants.tsv"), encoding="utf-8") as file:
        mutants = [line.rstrip("\n").split("\t") for line in file]

    def isDecided(mutant):
        row = decided.get(mutant[0], [])
        long = re.fullmatch(r"survived (\d+) s", row[-1]) if row else None
        return row[:-1] == mutant and (long is None or int(long[1]) >= asked.seconds)

    decided = {m[0]: decided[m[0]] for m in mutants if isDecided(m)}
    mutants = [m for m in mutants if re.search(asked.only, m[1])][:: asked.every]
    lock = threading.Lock()

    def decide(mutant):
        number = mutant[0]
        if number in decided:
            return
        verdict = "survived" if meeting[int(number)] else "unmet"
        ends = time.monotonic() + asked.seconds
        room = mutant[1].split("/")[1]
        with lock:
            sharp = {d[-1].split(" ")[-1] for d in decided.values() if d[1] == mutant[1]}
        likely = lambda test: (test.name not in sharp, not test.isOf(room))
        for test in sorted(meeting[int(number)], key=likely):
            if time.monotonic() > ends:
                verdict = f"survived {asked.seconds:.0f} s"
                break
            patience = 5 + 10 * test.seconds
            ending = test.ending(patience, STILLBAY_MUTANT=number)
            if ending == 0 or test.ending(patience) != 0:
                continue  # what fails without it says nothing
            verdict = ("noticed by " if ending is not None else "noticed by its time in ") + test.name
            break
        with lock:
            decided[number] = [*mutant, verdict]
            with open(results, "a", encoding="utf-8") as file:
                file.write("\t".join(decided[number]) + "\n")
            if len(decided) % 50 == 0:
                say(f"{len(decided)} of {len(mutants)}")

    with concurrent.futures.ThreadPoolExecutor(asked.jobs) as pool:
        list(pool.map(decide, mutants))
    ours = [decided[m[0]] for m in mutants]
    left = [m for m in ours if not m[-1].startswith("noticed")]
    with open(os.path.join(copy, "survivors.tsv"), "w", encoding="utf-8") as file:
        file.writelines("\t".join(m) + "\n" for m in left)
    unmet = sum(m[-1] == "unmet" for m in left)
    slow = sum(m[-1].startswith("noticed by its time") for m in ours)
    roomOf = lambda mutant: mutant[1].split("/")[1]
    for room in sorted({roomOf(m) for m in ours}):
        there, passed = sum(roomOf(m) == room for m in ours), sum(roomOf(m) == room for m in left)
        print(f"{room}: {there} mutants, {there - passed} noticed, {passed} not")
    print(f"{len(ours)} mutants: {len(ours) - len(left)} noticed ({slow} by a test that took too long), "
          f"{len(left) - unmet} survived, {unmet} met by no test")


if __name__ == "__main__":
    main()
