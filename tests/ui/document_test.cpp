// SPDX-License-Identifier: MIT
#include "ui/document/document.h"

#include "tests/ui/samples.h"
#include "ui/document/native_path.h"

#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <limits>
#include <string>

namespace stillbay::ui {
namespace {

struct OpenDocument : testing::Test {
    OpenDocument()
    {
        EXPECT_TRUE(document.open(samplePath("reedbed")));
        start = document.setup();
    }

    Result<void> setBore(double bore_mm)
    {
        return document.edit(QStringLiteral("change the bore"), QStringLiteral("tube.bore_mm"),
                             [=](stillbay::Setup& setup) { setup.tube.bore_mm = bore_mm; });
    }

    Document document;
    stillbay::Setup start;
};

TEST_F(OpenDocument, ADragIsOneUndoStep)
{
    for (const double bore : {4.5, 4.0, 3.5})
        ASSERT_TRUE(setBore(bore));
    EXPECT_EQ(document.undoStack().count(), 1);
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
    document.undoStack().redo();
    EXPECT_EQ(document.setup().tube.bore_mm, 3.5);
}

TEST_F(OpenDocument, AnotherGestureOrFieldIsAnotherStep)
{
    ASSERT_TRUE(setBore(4.0));
    document.endGesture();
    ASSERT_TRUE(setBore(3.0));
    ASSERT_TRUE(document.edit(QStringLiteral("x"), QStringLiteral("tube.loss_factor"),
                              [](stillbay::Setup& setup) { setup.tube.loss_factor = 0.2; }));
    EXPECT_EQ(document.undoStack().count(), 3);
}

TEST_F(OpenDocument, StepsWithoutAFieldNeverMerge)
{
    for (const double bore : {4.5, 4.0})
        ASSERT_TRUE(document.edit(QStringLiteral("x"), {},
                                  [=](stillbay::Setup& setup) { setup.tube.bore_mm = bore; }));
    EXPECT_EQ(document.undoStack().count(), 2);
}

TEST_F(OpenDocument, WhatChangesNothingLeavesNoStep)
{
    const quint64 revision = document.revision();
    ASSERT_TRUE(setBore(start.tube.bore_mm));
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_EQ(document.revision(), revision);
}

TEST_F(OpenDocument, ADragBackToTheStartLeavesNoStep)
{
    for (const double bore : {4.5, 4.0, start.tube.bore_mm})
        ASSERT_TRUE(setBore(bore));
    EXPECT_EQ(document.undoStack().count(), 0);
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(document.setup(), start);
}

TEST_F(OpenDocument, AfterUndoTheSameFieldStartsAStepOfItsOwn)
{
    ASSERT_TRUE(setBore(4.5));
    document.endGesture();
    ASSERT_TRUE(setBore(4.0));
    document.undoStack().undo();
    ASSERT_TRUE(setBore(3.0));
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    EXPECT_EQ(document.setup().tube.bore_mm, 4.5);
}

TEST_F(OpenDocument, WhatTheFileWouldRefuseIsNotTaken)
{
    const quint64 revision = document.revision();
    for (const double bore : {9.0, -1.0, std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity()}) {
        const Result<void> done = setBore(bore);
        ASSERT_FALSE(done) << bore;
        EXPECT_EQ(done.error().where, "tube.bore_mm");
    }
    EXPECT_EQ(document.setup(), start);
    EXPECT_EQ(document.revision(), revision);
    EXPECT_EQ(document.undoStack().count(), 0);
}

TEST_F(OpenDocument, SaveIsTheCleanStateAndReadsBackTheSame)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(setBore(4.0));
    EXPECT_TRUE(document.isModified());
    ASSERT_TRUE(document.save(path));
    EXPECT_FALSE(document.isModified());
    EXPECT_EQ(document.path(), path);
    document.undoStack().undo();
    EXPECT_TRUE(document.isModified());

    Document other;
    ASSERT_TRUE(other.open(path));
    EXPECT_EQ(other.setup().tube.bore_mm, 4.0);
    document.undoStack().redo();
    EXPECT_EQ(other.setup(), document.setup());
}

// Oracle: definition. What was saved cannot be reached any more, so nothing counts as saved.
TEST_F(OpenDocument, UndoIsBoundedAndNeverCallsUnsavedWorkSaved)
{
    const auto steps = [this](int count) {
        for (int k = 0; k < count; ++k) {
            document.endGesture();
            ASSERT_TRUE(setBore(k % 2 == 0 ? 4.0 : 4.5));
        }
    };
    ASSERT_FALSE(document.isModified());
    steps(Document::kMostSteps);
    EXPECT_EQ(document.undoStack().count(), Document::kMostSteps);
    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
    EXPECT_FALSE(document.isModified());  // all of them, back to the file

    steps(Document::kMostSteps + 1);
    EXPECT_EQ(document.undoStack().count(), Document::kMostSteps);
    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_NE(document.setup(), start);
    EXPECT_TRUE(document.isModified());

    const QTemporaryDir folder;
    ASSERT_TRUE(document.save(folder.filePath(QStringLiteral("mine.stillbay"))));
    EXPECT_FALSE(document.isModified());
    document.undoStack().redo();
    EXPECT_TRUE(document.isModified());
    document.undoStack().undo();
    EXPECT_FALSE(document.isModified());
}

// Oracle: 256 MB over the bytes of the craft's text.
TEST_F(OpenDocument, UndoOfALargeCraftHasFewerSteps)
{
    EXPECT_EQ(document.undoStack().undoLimit(), 200);
    EXPECT_EQ(Document::stepsOf(5000), 200);
    EXPECT_EQ(Document::stepsOf(qsizetype{8} << 20), 32);
    QByteArray text = fileBytes(samplePath("reedbed"));
    text.insert(text.indexOf('{') + 1, "\"more\": \"" + QByteArray(4 << 20, 'x') + "\",");
    ASSERT_TRUE(document.openText(text, QStringLiteral("large")));
    EXPECT_EQ(document.undoStack().undoLimit(), 63);
    ASSERT_TRUE(document.open(samplePath("reedbed")));
    EXPECT_EQ(document.undoStack().undoLimit(), 200);
}

// Oracle: the system's own view of the folder: the file given, and no other.
TEST_F(OpenDocument, AFileWhoseNameIsNotUtf8IsOpenedAndSavedAsItWasGiven)
{
    const QTemporaryDir folder;
    const std::filesystem::path there(folder.path().toStdString());
    const std::string name =
        "Gr\xF6\xDF"
        "e.stillbay";
    std::filesystem::copy_file(samplePath("reedbed").toStdString(), there / name);
    std::filesystem::permissions(there / name, std::filesystem::perms::owner_all);
    const QString path = pathFrom((there / name).string());

    ASSERT_TRUE(document.open(path));
    EXPECT_TRUE(document.stamp().exists());
    ASSERT_TRUE(setBore(4.0));
    ASSERT_TRUE(document.save(document.path()));

    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(there))
        names.push_back(entry.path().filename().string());
    EXPECT_EQ(names, std::vector{name});
    Document other;
    ASSERT_TRUE(other.open(path));
    EXPECT_EQ(other.setup().tube.bore_mm, 4.0);
    std::filesystem::remove(there / name);  // which Qt cannot
}

// Oracle: the bytes. Every name comes back, that of a character used for bytes as well.
TEST(NativePath, GivesBackTheBytes)
{
    for (int a = 1; a < 256; ++a)
        for (int b = 1; b < 256; b += 3) {
            const std::string name{'/', static_cast<char>(a), static_cast<char>(b)};
            EXPECT_EQ(nativePath(pathFrom(name)), name) << a << ' ' << b;
        }
    for (const char* const name : {"/home/x/Größe.stillbay", "/飛/🛩", "\xEE\xBE\x80",
                                   "\xEE\xBF\xBF\xFF", "\xED\xA0\x80", ""})
        EXPECT_EQ(nativePath(pathFrom(name)), name);
    EXPECT_EQ(pathFrom("/home/x/Größe"), QStringLiteral("/home/x/Größe"));
}

TEST_F(OpenDocument, ASaveThatFailsKeepsPathAndUnsavedState)
{
    ASSERT_TRUE(setBore(4.0));
    EXPECT_FALSE(document.save(QStringLiteral("/proc/nowhere/craft.stillbay")));
    EXPECT_TRUE(document.isModified());
    EXPECT_EQ(document.path(), samplePath("reedbed"));
}

// Oracle: the setup, path, revision and steps from before.
TEST_F(OpenDocument, ABadFileKeepsTheCraft)
{
    const QTemporaryDir folder;
    const QByteArray good = fileBytes(samplePath("reedbed"));
    const struct {
        const char* name;
        QByteArray bytes;
    } cases[] = {{"empty", ""},
                 {"cut", good.left(good.size() / 2)},
                 {"text", "not a craft at all"},
                 {"other", R"({"format": "something-else", "version": 1})"},
                 {"future", QByteArray(good).replace("\"version\": 1", "\"version\": 99")},
                 {"nan", QByteArray(good).replace("\"bore_mm\": 5", "\"bore_mm\": NaN")},
                 {"huge", QByteArray(good).replace("\"bore_mm\": 5", "\"bore_mm\": 1e300")},
                 {"string", QByteArray(good).replace("\"bore_mm\": 5", "\"bore_mm\": \"5\"")},
                 {"bore", QByteArray(good).replace("\"bore_mm\": 5", "\"bore_mm\": 8")}};
    ASSERT_TRUE(setBore(4.0));
    const stillbay::Setup before = document.setup();
    const quint64 revision = document.revision();
    for (const auto& c : cases) {
        ASSERT_NE(c.bytes, good) << c.name;
        const QString path = folder.filePath(QString::fromLatin1(c.name));
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(c.bytes);
        file.close();
        const Result<void> done = document.open(path);
        ASSERT_FALSE(done) << c.name;
        EXPECT_FALSE(english(done.error().what).empty()) << c.name;
    }
    EXPECT_FALSE(document.open(folder.filePath(QStringLiteral("missing"))));
    EXPECT_FALSE(document.open(folder.path()));
    EXPECT_EQ(document.setup(), before);
    EXPECT_EQ(document.path(), samplePath("reedbed"));
    EXPECT_EQ(document.revision(), revision);
    EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(OpenDocument, UnknownKeysAreToldAndSurvive)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("extra.stillbay"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(fileBytes(samplePath("reedbed"))
                   .replace("\"bore_mm\"", "\"colour\": \"amber\", \"bore_mm\""));
    file.close();
    ASSERT_TRUE(document.open(path));
    ASSERT_EQ(document.fileWarnings().size(), 1u);
    EXPECT_NE(english(document.fileWarnings()[0].text).find("colour"), std::string::npos);
    ASSERT_TRUE(document.save(path));
    EXPECT_TRUE(fileBytes(path).contains("amber"));
}

}  // namespace
}  // namespace stillbay::ui
