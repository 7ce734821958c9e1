#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Writes a copy of the project in which one operator of each formula of core can be switched.

    instrument.py ROOT COPY COMPILE_COMMANDS [DROPPED]

DROPPED lists what does not compile, a line each: file, number of the line. What was found is kept in
COPY/found.pickle, for reading core again takes minutes.

A formula is a whole expression with numbers in it. Of its operators one is taken, by a number made of its text:
the same each time. COPY/mutants.tsv lists them: number, file, line, what it is, what it becomes.
What is known while compiling (constexpr) cannot be switched and is left out, as are integers and templates
whose types are not known; comparisons, least and most are never switched.
"""
import json
import os
import pickle
import shlex
import shutil
import sys
import zlib

from clang.cindex import Config, CursorKind, Index, TypeKind

FLOATING = {TypeKind.DOUBLE, TypeKind.FLOAT, TypeKind.LONGDOUBLE}
ARITHMETIC = {"+": "plus", "-": "minus", "*": "times", "/": "over"}
FUNCTIONS = {"sin", "cos", "tan", "sinh", "cosh", "tanh", "sqrt", "exp", "log", "log10", "hypot", "atan2", "asin",
             "acos", "atan", "pow", "cbrt", "norm", "dot", "abs"}
STATEMENTS = {CursorKind.COMPOUND_STMT, CursorKind.RETURN_STMT, CursorKind.IF_STMT, CursorKind.FOR_STMT,
              CursorKind.CXX_FOR_RANGE_STMT, CursorKind.WHILE_STMT, CursorKind.DECL_STMT, CursorKind.VAR_DECL,
              CursorKind.LAMBDA_EXPR, CursorKind.FIELD_DECL, CursorKind.CASE_STMT, CursorKind.CONDITIONAL_OPERATOR,
              CursorKind.INIT_LIST_EXPR}
NEVER = {CursorKind.STATIC_ASSERT, CursorKind.ENUM_DECL, CursorKind.TEMPLATE_NON_TYPE_PARAMETER, CursorKind.TYPE_ALIAS_DECL}


def isFloating(kind):
    return kind.get_canonical().kind in FLOATING


def isComplex(kind):
    return kind.get_canonical().spelling.replace("const ", "").startswith("std::complex<")


def isMatrix(kind):
    return kind.get_canonical().spelling.replace("const ", "").startswith("Eigen::")


def isConstant(cursor, source):
    if cursor.kind not in (CursorKind.VAR_DECL, CursorKind.FUNCTION_DECL, CursorKind.CXX_METHOD,
                           CursorKind.CONSTRUCTOR, CursorKind.FUNCTION_TEMPLATE, CursorKind.FIELD_DECL):
        return False
    start = cursor.extent.start.offset
    head = source[start:cursor.extent.end.offset].split(b"{")[0].split(b"=")[0]
    return b"constexpr" in head or b"consteval" in head


class File:
    def __init__(self, path):
        with open(path, "rb") as file:
            self.source = file.read()
        self.found = {}  # (start, end) of what is rewritten: (group, line, what, becomes, parts)

    def text(self, extent):
        return self.source[extent.start.offset:extent.end.offset]


class Instrument:
    def __init__(self, root):
        self.root = root
        self.files = {}

    def fileOf(self, cursor):
        where = cursor.location.file
        if not where:
            return None
        path = os.path.realpath(where.name)
        if not path.startswith(os.path.join(self.root, "core") + os.sep):
            return None
        return self.files.setdefault(path, None) or self.open(path)

    def open(self, path):
        self.files[path] = File(path)
        return self.files[path]

    def walk(self, cursor, group):
        for child in cursor.get_children():
            file = self.fileOf(child)
            if not file:
                continue
            if child.kind in NEVER or isConstant(child, file.source):
                continue
            inner = None if child.kind in STATEMENTS else group
            if child.kind.is_expression() and child.kind not in STATEMENTS:
                if inner is None:
                    inner = child.extent.start.offset
                self.look(file, child, inner)
            self.walk(child, inner)

    def look(self, file, cursor, group):
        # What a macro wrote has one place for all its parts: their texts cannot be told apart.
        children = list(cursor.get_children())
        extent = (cursor.extent.start.offset, cursor.extent.end.offset)
        if extent in file.found or extent[0] >= extent[1]:
            return

        def note(what, becomes, parts):
            file.found[extent] = (group, cursor.extent.start.line, what, becomes, parts)

        def span(part):
            return (part.extent.start.offset, part.extent.end.offset)

        if cursor.kind == CursorKind.BINARY_OPERATOR and len(children) == 2:
            left, right = children
            between = file.source[left.extent.end.offset:right.extent.start.offset].strip().decode()
            # What stands in brackets begins behind them.
            if between in ARITHMETIC and isFloating(cursor.type):
                other = {"+": "-", "-": "+", "*": "/", "/": "*"}[between]
                note(between, other, (ARITHMETIC[between], span(left), span(right)))
        elif cursor.kind == CursorKind.COMPOUND_ASSIGNMENT_OPERATOR and len(children) == 2:
            left, right = children
            between = file.source[left.extent.end.offset:right.extent.start.offset].strip().decode()
            if between in ("+=", "-=", "*=", "/=") and isFloating(left.type):
                other = {"+=": "-=", "-=": "+=", "*=": "/=", "/=": "*="}[between]
                note(between, other, (between, span(left), span(right)))
        elif cursor.kind == CursorKind.UNARY_OPERATOR and len(children) == 1 and isFloating(cursor.type):
            if file.source[extent[0]:extent[0] + 1] == b"-" and \
                    children[0].kind not in (CursorKind.FLOATING_LITERAL, CursorKind.INTEGER_LITERAL):
                note("-a", "a", ("negated", span(children[0])))
        elif cursor.kind == CursorKind.CALL_EXPR:
            name = cursor.spelling
            if name in FUNCTIONS and isFloating(cursor.type):
                note(f"{name}()", f"1.1 {name}()", ("scaled", extent))
            elif name in ("operator+", "operator-") and len(children) == 3 and \
                    (isComplex(cursor.type) or isMatrix(cursor.type)):
                left, right = children[0], children[2]
                between = file.source[left.extent.end.offset:right.extent.start.offset].strip().decode()
                if between in ("+", "-"):
                    note(f"{between} of vectors", "the other sign", (f"signed{between}", span(left), span(right)))
            elif name == "operator*" and len(children) == 3 and (isComplex(cursor.type) or isMatrix(cursor.type)):
                note("product of vectors", "- product", ("product", extent))

    def chosen(self):
        """One of each group, by a number made of its text; those around and inside it are left as they are."""
        number = 0
        mutants = []
        for path in sorted(self.files):
            groups = {}
            for extent, found in sorted(self.files[path].found.items()):
                groups.setdefault(found[0], []).append(extent)
            name = os.path.relpath(path, self.root)
            for group, extents in sorted(groups.items()):
                extent = extents[zlib.crc32(f"{name}:{self.files[path].source[extents[0][0]:extents[0][1]]}".encode()) % len(extents)]
                number += 1
                mutants.append((number, path, extent))
        return mutants


def rewritten(source, start, end, inside):
    """The text from start to end, with what is inside it replaced."""
    out, at = b"", start
    for (a, b), write in sorted(inside.items()):
        if a < at or b > end:
            continue
        out += source[at:a] + write(a, b)
        at = b
    return out + source[at:end]


def write(file, mutants):
    """Each chosen expression in its own words; one lies inside another only through lambdas and brackets."""
    byExtent = {extent: number for number, extent in mutants}

    def inner(start, end):
        nested = {e for e in byExtent if start <= e[0] and e[1] <= end and e != (start, end)}
        outermost = {e for e in nested if not any(o != e and o[0] <= e[0] and e[1] <= o[1] for o in nested)}
        return rewritten(file.source, start, end, {e: one for e in outermost})

    def one(a, b):
        number = byExtent[(a, b)]
        kind, *parts = file.found[(a, b)][4]
        n = str(number).encode()
        ns = b"stillbay_mutation::"
        # inner() of a part whose extent is itself chosen would skip it: a part is never longer than the whole.
        def part(p):
            return one(*p) if p in byExtent and p != (a, b) else inner(*p)
        if kind in ("plus", "minus", "times", "over"):
            # Lines keep their numbers, by which what does not compile is found.
            between = b"\n" * file.source[parts[0][1]:parts[1][0]].count(b"\n")
            return ns + kind.encode() + b"(" + n + b", " + part(parts[0]) + b", " + between + part(parts[1]) + b")"
        if kind in ("+=", "-="):
            return part(parts[0]) + b" " + kind.encode() + b" " + ns + b"sign(" + n + b") * (" + part(parts[1]) + b")"
        if kind in ("*=", "/="):
            return part(parts[0]) + b" " + kind.encode() + b" " + ns + b"inverse(" + n + b", " + part(parts[1]) + b")"
        if kind == "negated":
            return b"(" + ns + b"sign(" + n + b") * -(" + part(parts[0]) + b"))"
        if kind == "scaled":
            return b"(" + ns + b"scale(" + n + b") * " + inner(a, b) + b")"
        if kind == "product":
            return b"(" + ns + b"sign(" + n + b") * (" + inner(a, b) + b"))"
        if kind.startswith("signed"):
            return part(parts[0]) + b" " + kind[-1:].encode() + b" " + ns + b"sign(" + n + b") * (" + part(parts[1]) + b")"
        raise ValueError(kind)

    body = inner(0, len(file.source))
    return b'#include "core/mutation_switch.h"\n#line 1\n' + body


def read(instrument, database):
    """Every expression of core that can be switched, as the compiler sees it."""
    index = Index.create()
    with open(database) as file:
        commands = json.load(file)
    sources = []
    for entry in commands:
        path = os.path.realpath(os.path.join(entry["directory"], entry["file"]))
        if not path.startswith(os.path.join(instrument.root, "core") + os.sep) or path in sources:
            continue
        sources.append(path)
        words = shlex.split(entry["command"])
        arguments = [w for w in words[1:] if w.startswith(("-I", "-D", "-std"))]
        for at, word in enumerate(words):
            if word == "-isystem":
                arguments += [word, words[at + 1]]
        unit = index.parse(path, args=arguments + ["-x", "c++"])
        wrong = [d for d in unit.diagnostics if d.severity >= 3]
        if wrong:
            sys.exit(f"instrument: {wrong[0]}")
        instrument.walk(unit.cursor, None)


def main():
    root, copy, database = (os.path.realpath(p) for p in sys.argv[1:4])
    dropped = set()
    if len(sys.argv) > 4:
        with open(sys.argv[4]) as file:
            dropped = {tuple(line.split()[:2]) for line in file}
    kept = os.path.join(copy, "found.pickle")
    instrument = Instrument(root)
    if os.path.exists(kept):
        with open(kept, "rb") as file:
            instrument.files = pickle.load(file)
    else:
        read(instrument, database)
        os.makedirs(copy, exist_ok=True)
        with open(kept, "wb") as file:
            pickle.dump(instrument.files, file)
    for part in ("core", "app", "tests", "samples", "docs", "ui", "CMakeLists.txt", "CMakePresets.json", "README.md",
                 "DEVELOPERS.md", "LICENSE"):
        source, target = os.path.join(root, part), os.path.join(copy, part)
        if os.path.isdir(source):
            shutil.copytree(source, target, dirs_exist_ok=True)
        else:
            os.makedirs(copy, exist_ok=True)
            shutil.copy2(source, target)
    here = os.path.dirname(os.path.realpath(__file__))
    shutil.copy(os.path.join(here, "switch.h"), os.path.join(copy, "core", "mutation_switch.h"))
    shutil.copy(os.path.join(here, "switch.cpp"), os.path.join(copy, "core", "mutation_switch.cpp"))
    lists = os.path.join(copy, "core", "CMakeLists.txt")
    with open(lists) as file:
        text = file.read().replace("  PRIVATE\n", "  PRIVATE\n    mutation_switch.cpp\n", 1)
    with open(lists, "w") as file:
        file.write(text)
    rows, byFile = [], {}
    for number, path, extent in instrument.chosen():
        _, line, what, becomes, _ = instrument.files[path].found[extent]
        name = os.path.relpath(path, root)
        if (name, str(line)) in dropped:
            continue
        rows.append(f"{number}\t{name}\t{line}\t{what}\t{becomes}")
        byFile.setdefault(path, []).append((number, extent))
    for path, mutants in byFile.items():
        target = os.path.join(copy, os.path.relpath(path, root))
        with open(target, "wb") as file:
            file.write(write(instrument.files[path], mutants))
    with open(os.path.join(copy, "mutants.tsv"), "w") as file:
        file.write("\n".join(rows) + "\n")
    print(f"{len(rows)} mutants in {len(byFile)} files")


if __name__ == "__main__":
    main()
