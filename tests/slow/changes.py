#!/usr/bin/env python3
"""Changes at random under a watched folder: projects, drawings and folders come, change, move and go, a clash of names now and then. When it
is quiet again what `watch` says (health, batch.json, files of problems) must be what a `batch` of the same folder finds, with nothing to make.
    python3 tests/slow/changes.py PROGRAM [ROUNDS [SEED]]      (a round takes some twenty-five seconds)"""
import json
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

FOLDERS = ["in", "in/a", "in/b", "in/a/c", "in/a/c/d"]
CLOTHS = "cloths: { linen: { kind: dress linen, width: 140 cm, bought: [3 m] } }\n"


def skirt(n):
    return (f"gownsheaf: 1\ntitle: Skirt {n}\n{CLOTHS}pieces: [{{ piece: breadth, part of: skirt, make: 1, from: [linen], cut width: 100 cm, "
            "cut length: 95 cm }]\nprint: { sheets: pin-up }\n")


def drawn(n, drawing):
    return (f"gownsheaf: 1\ntitle: Front {n}\n{CLOTHS}pieces: [{{ piece: front, part of: bodice, make: 1, from: [linen], "
            f"outline: {drawing}#front, outline is: cut line }}]\n")


def drawing(n):
    return ("<svg xmlns='http://www.w3.org/2000/svg' width='200mm' height='200mm' viewBox='0 0 200 200'>"
            f"<path id='front' d='M10 10H{100 + n}V150H10Z'/></svg>")


class Round:
    def __init__(self, program, seed):
        self.program, self.draw = program, random.Random(seed)

    def folder(self):
        folder = self.draw.choice(FOLDERS)
        os.makedirs(folder, exist_ok=True)
        return folder

    def name(self):
        return self.folder() + "/" + self.draw.choice(["p.yaml", "p.yml", "q.yaml", "-r.yaml", "project.yaml"])

    def text(self):
        kind = self.draw.random()
        if kind < 0.4:
            return skirt(self.draw.randrange(50))
        if kind < 0.75:
            return drawn(self.draw.randrange(9), self.draw.choice(["s.svg", "./s.svg", "sub/s.svg"]))
        return "gownsheaf: 1\ntitle: Torn\nsleevs: 3\n" if kind < 0.9 else "title: buttons to look at\n"

    @staticmethod
    def write(path, text):
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "w") as file:
            file.write(text)

    def change(self, watch):
        kind = self.draw.random()
        if kind < 0.15:
            self.write("in/.new", self.text())
            os.rename("in/.new", self.name())
        elif kind < 0.30:
            self.write(self.name(), self.text())
        elif kind < 0.50:
            self.write(self.folder() + self.draw.choice(["/", "/sub/"]) + "s.svg", drawing(self.draw.randrange(100)))
        elif kind < 0.60:
            os.remove(self.name())
        elif kind < 0.70:
            os.rename(self.name(), self.name())
        elif kind < 0.76:
            shutil.rmtree(self.draw.choice(FOLDERS[1:]))
        elif kind < 0.84:
            to = "in/" + self.draw.choice(["m", "n", "a", "b"])
            if not os.path.exists(to):
                os.rename(self.draw.choice(FOLDERS[1:]), to)
        elif kind < 0.88:
            shutil.rmtree(self.draw.choice(["in/m", "in/n"]))
        elif kind < 0.90:
            os.symlink("/etc/passwd", self.folder() + "/l.yaml")
        elif kind < 0.92:
            os.remove(self.folder() + "/l.yaml")
        elif kind < 0.94:
            os.rename("in", "away")
            time.sleep(self.draw.choice([0, 0.05, 1.3]))
            os.rename("away", "in")
        elif kind < 0.96:
            os.makedirs(self.folder() + "/x.pdf", exist_ok=True)
        else:
            watch.send_signal(signal.SIGSTOP)
            time.sleep(0.1)
            watch.send_signal(signal.SIGCONT)

    def run(self, seconds):
        os.mkdir("in")
        options = ["in", "--out", "out", "--effort", "quick"]
        with open("log", "w") as log:
            watch = subprocess.Popen([self.program, "watch", *options, "--settle", "40", "--health", "health"], stdout=log, stderr=log)
        end = time.time() + seconds
        while time.time() < end:
            try:
                self.change(watch)
            except OSError:
                pass  # it is not there, or something stands in its way: as happens
            time.sleep(self.draw.choice([0, 0, 0, 0.01, 0.05, 0.2]))
        before, health = None, ""
        for _ in range(40):
            time.sleep(1.5)
            before, health = health, open("health").read()
            if health == before and '"watching"' in health and '"waiting":0' in health:
                break
        health, listed = json.loads(health), json.load(open("out/batch.json"))["projects"]
        told = sum(name.endswith(".problems.txt") for _, _, names in os.walk("out") for name in names)
        watch.send_signal(signal.SIGTERM)
        code = watch.wait()
        batch = subprocess.run([self.program, "batch", *options, "--log", "json"], capture_output=True)
        found = [json.loads(line) for line in batch.stdout.splitlines()][:-1]

        def seen(results):
            return [(r["project"], r["state"] == "failed", r.get("problem")) for r in results]

        failed = [r["project"] for r in found if r["state"] == "failed"]
        wrong = [f"not current: {r['project']}" for r in found if r["state"] == "made"]
        if seen(listed) != seen(found):
            wrong.append(f"listed otherwise: {set(seen(listed)) ^ set(seen(found))}")
        if (health["projects"], health["failed"], told, code) != (len(found), len(failed), len(failed), 0):
            wrong.append(f"{health}, {told} files of problems, exit {code}; found {len(found)}, failed {failed}")
        wrong += [f"left: {name}" for _, _, names in os.walk("out") for name in names if name.startswith(".gownsheaf-")]
        return len(found), wrong


def main():
    program = os.path.abspath(sys.argv[1])
    rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 12
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else 1
    bad = 0
    for n in range(seed, seed + rounds):
        with tempfile.TemporaryDirectory(prefix="gownsheaf-changes-") as room:
            os.chdir(room)
            projects, wrong = Round(program, n).run(20)
            for line in wrong:
                print(f"seed {n}: {line}")
            bad += bool(wrong)
            os.chdir("/")
    print(f"{rounds} rounds of changes, {bad} in which watch and batch did not agree")
    sys.exit(bad > 0)


main()
