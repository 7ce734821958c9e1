// SPDX-License-Identifier: MIT
// Everything the window keeps on a disk, with each call of the system that writes there failing in
// turn: first a run that counts the calls, then one for each.
#include "app/commands/save_craft.h"
#include "core/disk/whole_file.h"
#include "tests/ui/faults/disk_fault.h"
#include "tests/ui/files_fixture.h"
#include "ui/document/autosave.h"
#include "ui/document/own_presets.h"
#include "ui/document/recent_files.h"
#include "ui/document/safe_write.h"
#include "ui/document/settings_file.h"
#include "ui/document/snapshot.h"
#include "ui/document/state_folder.h"
#include "ui/document/unsaved_work.h"
#include "ui/find/stock_model.h"
#include "ui/find/tube_stock.h"
#include "ui/widgets/display_text.h"

#include <QApplication>
#include <QDir>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>
#include <QSettings>

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fcntl.h>
#include <string_view>
#include <sys/stat.h>
#include <unistd.h>

namespace stillbay::ui {
namespace {

struct Fault {
    const char* name;
    int number;       ///< errno; 0: a short write
    bool fromThenOn;  ///< and every call after it

    QByteArray how() const
    {
        return (number == 0 ? QByteArray("short") : QByteArray::number(number)) +
               (fromThenOn ? "+" : "");
    }
    QString words() const { return QString::fromLocal8Bit(std::strerror(number)); }
};

void PrintTo(const Fault& fault, std::ostream* out)
{
    *out << fault.name;
}

constexpr std::array kFaults{
    Fault{"Full", ENOSPC, false},       Fault{"FullFromThenOn", ENOSPC, true},
    Fault{"Failing", EIO, false},       Fault{"FailingFromThenOn", EIO, true},
    Fault{"ReadOnly", EROFS, false},    Fault{"ReadOnlyFromThenOn", EROFS, true},
    Fault{"Interrupted", EINTR, false}, Fault{"Short", 0, false},
    Fault{"ShortFromThenOn", 0, true},  Fault{"NotSupported", EINVAL, false}};

/// Arms a fault for as long as it lives.
struct Armed {
    Armed(const QString& folder, int at, const QByteArray& how)
    {
        stillbayDiskFault(folder.toLocal8Bit(), nullptr, at, how);
    }
    ~Armed() { stillbayDiskFault(nullptr, nullptr, 0, ""); }
    Armed(const Armed&) = delete;
    Armed& operator=(const Armed&) = delete;
};

/// How many calls an action takes where none fails.
template <class Action>
int callsOf(const QString& folder, const Action& act)
{
    const Armed counting(folder, 0, "");
    act();
    return static_cast<int>(std::strlen(stillbayDiskCalls()));
}

QStringList foreignIn(const QString& folder, const QStringList& expected)
{
    static const QRegularExpression ours(QStringLiteral("^\\.stillbay-(save|swap)-[a-z0-5]{8}$"));
    QStringList foreign;
    for (const QString& name : QDir(folder).entryList(QDir::Files | QDir::Hidden))
        if (!expected.contains(name) && !ours.match(name).hasMatch())
            foreign << name;
    return foreign;
}

// What Qt may have beside the settings: its lock, and what sweepSettings() removes.
QStringList ownIn(const QString& folder)
{
    return QDir(folder).entryList(
        {QStringLiteral("*.json"), QStringLiteral("*.json.lock"), QStringLiteral("*.json.??????")},
        QDir::Files | QDir::Hidden);
}

// As if some time had passed since: one that is young may be of somebody who writes.
void ageLock(const QString& settings)
{
    const std::array<timespec, 2> longAgo{};
    ::utimensat(AT_FDCWD, (settings + QStringLiteral(".lock")).toLocal8Bit(), longAgo.data(), 0);
}

// Those names of Qt's that a builder may have chosen are left alone.
QStringList leftBeside(const QString& settings)
{
    static const QRegularExpression asABuilders(
        QStringLiteral("\\.json\\.([A-Za-z][a-z]{5}|[A-Z]{6})$"));
    QStringList left = QFileInfo(settings).dir().entryList(
        {QFileInfo(settings).fileName() + QStringLiteral(".*")}, QDir::Files);
    left.removeIf([](const QString& name) { return asABuilders.match(name).hasMatch(); });
    return left;
}

/// A window, and a folder of their own for each file of each run.
struct EachCall : WindowAndFiles, testing::WithParamInterface<Fault> {
    QString freshFolder()
    {
        const QString name = QString::number(++m_folders);
        EXPECT_TRUE(QDir(folder.path()).mkdir(name));
        return folder.filePath(name);
    }

    void edit(double freeLength_mm)
    {
        change([=](stillbay::Setup& setup) { setup.mounts.free_length_mm = freeLength_mm; });
    }

    const Fault& fault = GetParam();

private:
    int m_folders = 0;
};

INSTANTIATE_TEST_SUITE_P(Of, EachCall, testing::ValuesIn(kFaults),
                         [](const auto& tested) { return std::string(tested.param.name); });

// Oracle: what is on the disk. The first save of a file keeps the version before too.
TEST_P(EachCall, OfASaveThatFailsLeavesTheOldFileOrTheNewOneAndSaysWhich)
{
    const QByteArray old = fileBytes(samplePath("reedbed"));
    const auto begin = [&] {
        const QString in = freshFolder();
        const QString path = in + QStringLiteral("/mine.stillbay");
        EXPECT_TRUE(QFile::copy(samplePath("reedbed"), path));
        EXPECT_TRUE(QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner));
        EXPECT_TRUE(window.openFile(path));
        edit(31.5);
        return in;
    };
    const QString counted = begin();
    const int calls = callsOf(
        counted, [&] { EXPECT_TRUE(window.saveFile(counted + QStringLiteral("/mine.stillbay"))); });
    ASSERT_GE(calls, 12);
    int refused = 0;
    for (int at = 1; at <= calls; ++at) {
        SCOPED_TRACE(at);
        document.undoStack().clear();
        const QString in = begin(), path = in + QStringLiteral("/mine.stillbay");
        const QByteArray mine = *document.text();
        bool saved = false;
        {
            const Armed armed(in, at, fault.how());
            saved = window.saveFile(path);
        }
        EXPECT_EQ(fileBytes(path), saved ? mine : old);
        EXPECT_EQ(window.isWindowModified(), !saved);
        EXPECT_EQ(
            foreignIn(in, {QStringLiteral("mine.stillbay"), QStringLiteral("mine.stillbay.bak")}),
            QStringList());
        const QString backup = path + QStringLiteral(".bak");
        EXPECT_TRUE(fileBytes(backup) == old || !QFile::exists(backup));
        const QString said = window.message();
        if (!saved) {
            ++refused;
            EXPECT_TRUE(said.contains(QStringLiteral("Could not save"))) << qPrintable(said);
            EXPECT_TRUE(said.contains(fault.words())) << qPrintable(said);
        } else if (!QFile::exists(backup)) {
            EXPECT_TRUE(said.contains(QStringLiteral("without a copy"))) << qPrintable(said);
            EXPECT_TRUE(said.contains(fault.words())) << qPrintable(said);
        } else {
            EXPECT_TRUE(said.isEmpty()) << qPrintable(said);
        }
        edit(32.5);
        EXPECT_TRUE(window.saveFile(path));
        EXPECT_EQ(fileBytes(path), *document.text());
        EXPECT_TRUE(QFile::exists(backup));
        ASSERT_TRUE(window.openFile(path));  // which sweeps
        // What was being exchanged can be another program's: it stays where it cannot be removed.
        const QStringList left =
            QDir(in).entryList({QStringLiteral(".stillbay-swap-*")}, QDir::Files | QDir::Hidden);
        EXPECT_LE(left.size(), fault.fromThenOn ? 1 : 0);
        for (const QString& name : left)
            EXPECT_TRUE(fileBytes(in + u'/' + name) == mine || fileBytes(in + u'/' + name) == old);
        EXPECT_EQ(QDir(in).entryList(QDir::Files | QDir::Hidden).size(), 2 + left.size());
        ASSERT_FALSE(HasFailure());
    }
    EXPECT_EQ(refused > 0, fault.number != 0 && fault.number != EINTR);
}

struct BesideAnother : WindowAndFiles, testing::WithParamInterface<const char*> {
    bool canExchange() const
    {
        const QString a = folder.filePath(QStringLiteral("a")),
                      b = folder.filePath(QStringLiteral("b"));
        put(a, "a");
        put(b, "b");
        return ::renameat2(AT_FDCWD, a.toLocal8Bit(), AT_FDCWD, b.toLocal8Bit(), RENAME_EXCHANGE) ==
                   0 &&
               fileBytes(a) == "b";
    }

    // What another program does to the file, at the moment that is given.
    static void rewrite() { rewriteBy(kOther); }

    // Twice, so many calls after the first, while another window sweeps at each of them.
    static void rewriteTwice()
    {
        ++s_acts;
        if (s_acts == 1)
            rewriteBy(kOther);
        if (s_acts == 1 + s_between)
            rewriteBy(kNewer);
        sweepBeside(s_path.toStdString());
    }

    static void rewriteBy(const QByteArray& bytes)
    {
        const std::string_view how = GetParam();
        if (how == "Renaming") {
            put(s_path + QStringLiteral(".other"), bytes);
            ASSERT_EQ(
                ::rename((s_path + QStringLiteral(".other")).toLocal8Bit(), s_path.toLocal8Bit()),
                0);
        } else {  // in place, and the time stamp as it was: a clock that was set back
            struct stat before {};
            ASSERT_EQ(::stat(s_path.toLocal8Bit(), &before), 0);
            put(s_path, bytes);
            const std::array times{before.st_atim, before.st_mtim};
            ASSERT_EQ(::utimensat(AT_FDCWD, s_path.toLocal8Bit(), times.data(), 0), 0);
        }
    }

    static inline QString s_path;
    static inline const QByteArray kOther = [] {
        QByteArray bytes = fileBytes(samplePath("reedbed"));  // as long as before
        return bytes.replace("\"Reedbed", "\"Ruudbud");
    }();
    static inline const QByteArray kNewer = QByteArray(kOther).replace("\"Ruudbud", "\"Raadbad");
    static inline int s_acts = 0;
    static inline int s_between = 0;
};

INSTANTIATE_TEST_SUITE_P(By, BesideAnother, testing::Values("Renaming", "WritingInPlace"),
                         [](const auto& tested) { return std::string(tested.param); });

// Oracle: what is on the disk. Whenever the other program writes while the craft is being saved,
// its version stays until the builder has been asked.
TEST_P(BesideAnother, ASaveLosesNoVersionOfIt)
{
    if (!canExchange())
        GTEST_SKIP() << "the file system of " << qPrintable(folder.path())
                     << " cannot exchange two names: what is written in between is not seen there";
    int asked = 0;
    for (int at = 1; at < 100; ++at) {
        SCOPED_TRACE(at);
        document.undoStack().clear();
        s_path = copyOf("reedbed", QStringLiteral("mine%1.stillbay").arg(at));
        ASSERT_EQ(kOther.size(), fileBytes(s_path).size());
        ASSERT_TRUE(window.openFile(s_path));
        change([](stillbay::Setup& setup) { setup.mounts.free_length_mm = 31.5; });
        const Answer cancel(QMessageBox::Cancel);
        stillbayAtDiskCall(rewrite);
        bool saved = false, wasLast = false;
        {
            const Armed armed(folder.path(), at, "act");
            saved = window.saveFile(s_path);
            wasLast = std::strlen(stillbayDiskCalls()) < static_cast<std::size_t>(at);
        }
        if (wasLast) {  // it was not reached any more
            EXPECT_TRUE(saved);
            EXPECT_GT(at, 12);
            break;
        }
        EXPECT_EQ(fileBytes(s_path), kOther);
        EXPECT_EQ(cancel.asked, saved ? 0 : 1);
        EXPECT_EQ(window.isWindowModified(), !saved);
        asked += cancel.asked;
        ASSERT_FALSE(HasFailure());
    }
    EXPECT_GE(asked, 5);
}

// Oracle: what is on the disk: the last version that the other program wrote.
TEST_P(BesideAnother, ASaveLosesNoStillNewerVersionOfIt)
{
    if (!canExchange())
        GTEST_SKIP() << "the file system of " << qPrintable(folder.path())
                     << " cannot exchange two names: what is written in between is not seen there";
    s_path = folder.filePath(QStringLiteral("twice.stillbay"));
    const QByteArray old = fileBytes(samplePath("reedbed"));
    int refused = 0;
    bool wasReached = true;
    for (int at = 1; wasReached; ++at) {
        s_acts = s_between = 1;
        for (; s_acts >= s_between; ++s_between) {  // until the second is not reached any more
            SCOPED_TRACE(testing::Message() << at << " and " << s_between);
            put(s_path, old);
            const FileStamp before = stampOnDisk(s_path);
            s_acts = 0;
            stillbayAtDiskCall(rewriteTwice);
            Result<void> saved;
            {
                const Armed armed(folder.path(), at, "act+");
                saved = safeWrite(s_path, "mine", {}, &before);
            }
            refused += saved ? 0 : 1;
            EXPECT_EQ(fileBytes(s_path), s_acts > s_between ? kNewer
                                         : s_acts > 0       ? kOther
                                                            : QByteArray("mine"));
            ASSERT_FALSE(HasFailure());
        }
        wasReached = s_acts > 0;
    }
    EXPECT_GE(refused, 10);
}

// Oracle: the snapshot, read by the reader of recovery.
TEST_P(EachCall, OfKeepingUnsavedWorkThatFailsLeavesTheOldWorkOrTheNewAndSaysSo)
{
    const QString in = stateFolder(QStringLiteral("unsaved"));
    const auto kept = [&] {
        QStringList crafts;
        for (const QString& name : QDir(in).entryList({QStringLiteral("*.json")}, QDir::Files)) {
            const auto read = readSnapshot(fileBytes(QDir(in).filePath(name)));
            EXPECT_TRUE(read) << qPrintable(name);
            crafts << QString::fromUtf8(read->craft);
        }
        return crafts;
    };
    for (const bool isFirst : {true, false}) {
        const auto run = [&](int at) {
            Document other;
            ASSERT_TRUE(other.open(samplePath("reedbed")));
            Autosave autosave(other);
            QStringList told;
            QObject::connect(&autosave, &Autosave::failed,
                             [&](const Phrase& why) { told << displayText(why); });
            const auto lengthen = [&](double length_mm) {
                ASSERT_TRUE(other.edit({}, {}, [=](stillbay::Setup& setup) {
                    setup.mounts.free_length_mm = length_mm;
                }));
            };
            QStringList before;
            if (!isFirst) {
                lengthen(31.5);
                ASSERT_TRUE(autosave.writeNow());
                before = kept();
            }
            lengthen(32.5);
            const QStringList after{QString::fromUtf8(*other.text())};
            bool written = false;
            {
                const Armed armed(in, at, at == 0 ? QByteArray() : fault.how());
                written = autosave.writeNow();
            }
            EXPECT_EQ(kept(), written ? after : before);
            EXPECT_EQ(told, written ? QStringList() : QStringList{fault.words()});
            EXPECT_TRUE(autosave.writeNow());
            EXPECT_EQ(kept(), after);
            autosave.drop();
            EXPECT_TRUE(findUnsavedWork().empty());  // which sweeps
            EXPECT_EQ(QDir(in).entryList(QDir::Files | QDir::Hidden), QStringList());
        };
        run(0);
        const int calls = static_cast<int>(std::strlen(stillbayDiskCalls()));
        ASSERT_GE(calls, 5);
        for (int at = 1; at <= calls; ++at) {
            SCOPED_TRACE(at);
            run(at);
            ASSERT_FALSE(HasFailure());
        }
    }
}

// A network folder without locks: whether a window has the work cannot be told.
TEST(UnsavedWorkWithoutLocks, IsNotTakenForLeftBehind)
{
    const QString in = stateFolder(QStringLiteral("unsaved"));
    Document other;
    ASSERT_TRUE(other.open(samplePath("reedbed")));
    ASSERT_TRUE(
        other.edit({}, {}, [](stillbay::Setup& setup) { setup.mounts.free_length_mm = 31.5; }));
    const auto noLocks = [&] {
        stillbayDiskFault(in.toLocal8Bit(), "k", 1, QByteArray::number(ENOLCK) + '+');
    };
    {
        noLocks();
        Autosave autosave(other);
        EXPECT_TRUE(autosave.writeNow());
        EXPECT_TRUE(findUnsavedWork().empty());
        EXPECT_GE(std::strlen(stillbayDiskCalls()), 2U);
        stillbayDiskFault(nullptr, nullptr, 0, "");
    }
    std::vector<UnsavedWork> found = findUnsavedWork();
    ASSERT_EQ(found.size(), 1U);
    found[0].remove();
}

// Oracle: what a new look at the settings reads, as another start of the program does.
TEST_P(EachCall, OfKeepingTheTubeStockThatFailsLeavesTheOldStockOrTheNewAndSaysSo)
{
    const QString file = QSettings().fileName(), in = QFileInfo(file).absolutePath();
    const std::vector<KeptTube> old{{{6.0, 3.0, 40.0}, true}}, fresh{{{9.0, 4.0, 55.5}, false}};
    const auto onDisk = [&] {
        return fileBytes(file);  // a QSettings would write what is still due
    };
    ASSERT_TRUE(writeTubeStock(fresh));
    const QByteArray ofFresh = onDisk();
    ASSERT_TRUE(writeTubeStock(old));
    const QByteArray ofOld = onDisk();
    ASSERT_NE(ofOld, ofFresh);
    const int calls = callsOf(in, [&] { EXPECT_TRUE(writeTubeStock(fresh)); });
    ASSERT_GE(calls, 5);
    EXPECT_EQ(onDisk(), ofFresh);
    for (int at = 1; at <= calls; ++at) {
        SCOPED_TRACE(at);
        ASSERT_TRUE(writeTubeStock(old));
        ASSERT_EQ(onDisk(), ofOld);
        Result<void> written;
        {
            const Armed armed(in, at, fault.how());
            written = writeTubeStock(fresh);
        }
        EXPECT_EQ(onDisk(), written ? ofFresh : ofOld);
        EXPECT_EQ(foreignIn(in, ownIn(in)), QStringList());
        if (!written) {
            EXPECT_FALSE(english(written.error().what).empty());
        }
        ageLock(file);
        sweepSettings();
        EXPECT_TRUE(writeTubeStock(fresh));
        EXPECT_EQ(onDisk(), ofFresh);
        EXPECT_EQ(leftBeside(file), QStringList());
        ASSERT_FALSE(HasFailure());
    }
}

// Settings of a program of its own name, which end with it.
struct OtherName {
    explicit OtherName(const QString& name)
    {
        QApplication::setApplicationName(name);
        file = QSettings().fileName();
    }
    ~OtherName()
    {
        QApplication::setApplicationName(m_before);
        useSettingsFile();
    }
    OtherName(const OtherName&) = delete;
    OtherName& operator=(const OtherName&) = delete;

    QString file;

private:
    const QString m_before = QApplication::applicationName();
};

// Oracle: what was put in, by Qt's own format.
TEST_P(EachCall, OfTakingOverEarlierSettingsThatFailsLosesNone)
{
    const QString in = QFileInfo(QSettings().fileName()).absolutePath();
    const QString word = QStringLiteral("group/word"), other = QStringLiteral("other");
    int calls = 0;
    for (int at = 0; at <= calls; ++at) {  // the first counts
        SCOPED_TRACE(at);
        const QString name = QStringLiteral("earlier-%1-%2").arg(QLatin1String(fault.name)).arg(at);
        QSettings(QSettings::NativeFormat, QSettings::UserScope, QApplication::organizationName(),
                  name)
            .setValue(word, QStringLiteral("kept"));
        const OtherName program(name);
        {
            const Armed armed(in, at, at == 0 ? QByteArray() : fault.how());
            useSettingsFile();
            EXPECT_EQ(QSettings().value(word).toString(), QStringLiteral("kept"));
        }
        if (at == 0)
            calls = static_cast<int>(std::strlen(stillbayDiskCalls()));
        ageLock(program.file);
        EXPECT_TRUE(keepSetting(other, 1));
        const QJsonObject onDisk = QJsonDocument::fromJson(fileBytes(program.file)).object();
        EXPECT_EQ(onDisk[word].toString(), QStringLiteral("kept"));
        EXPECT_EQ(onDisk[other].toInt(), 1);
        ASSERT_FALSE(HasFailure());
    }
    EXPECT_GE(calls, 5);
}

// Oracle: what is on the disk.
TEST(DamagedSettings, ThatCannotBePutAsideStayAsTheyAre)
{
    const QString word = QStringLiteral("group/word");
    const OtherName program(QStringLiteral("damaged-on-full-disk"));
    useSettingsFile();
    ASSERT_TRUE(keepSetting(word, 1));
    const QByteArray cut = fileBytes(program.file).chopped(3) + "    ";
    put(program.file, cut);
    {
        const Armed armed(QFileInfo(program.file).absolutePath(), 1,
                          QByteArray::number(ENOSPC) + '+');
        const QSettings reading;
    }
    const auto written = keepSetting(word, 2);
    ASSERT_FALSE(written);
    EXPECT_EQ(english(written.error().what),
              "the settings file is damaged and cannot be put aside");
    EXPECT_EQ(fileBytes(program.file), cut);
    QFile::remove(program.file);
}

TEST(StockOnFullDisk, SaysThatItCannotBeKept)
{
    StockModel model;
    QString said;
    QObject::connect(&model, &StockModel::notKept, [&](const QString& problem) { said = problem; });
    {
        const Armed armed(QFileInfo(QSettings().fileName()).absolutePath(), 1,
                          QByteArray::number(ENOSPC) + '+');
        EXPECT_EQ(model.add({7.5, 3.5, 45.0}), 0);
    }
    EXPECT_TRUE(said.startsWith(QStringLiteral("The tube stock cannot be kept: ")))
        << qPrintable(said);
    ageLock(QSettings().fileName());
    sweepSettings();
    said.clear();
    model.remove(0);
    EXPECT_TRUE(said.isEmpty()) << qPrintable(said);
}

// Oracle: what is on the disk.
TEST_P(EachCall, OfKeepingAPresetThatFailsLeavesTheOldOnesOrTheNewAndSaysSo)
{
    const QString in = stateFolder(), file = in + QStringLiteral("/presets.json");
    OwnPreset preset = ownPreset(sampleSetup("reedbed"), PresetKind::Motor, "mine");
    QFile::remove(file);
    const int calls = callsOf(in, [&] { EXPECT_TRUE(keepPreset(preset)); });
    ASSERT_GE(calls, 4);
    const QByteArray ofOne = fileBytes(file);
    preset.name = "mine too";
    ASSERT_TRUE(keepPreset(preset));
    const QByteArray ofTwo = fileBytes(file);
    for (int at = 1; at <= calls + 2; ++at) {  // two more, as the file is there
        SCOPED_TRACE(at);
        put(file, ofOne);
        Result<void> written;
        {
            const Armed armed(in, at, fault.how());
            written = keepPreset(preset);
        }
        EXPECT_EQ(fileBytes(file), written ? ofTwo : ofOne);
        if (!written) {
            EXPECT_EQ(displayText(written.error().what), fault.words());
        }
        EXPECT_TRUE(keepPreset(preset));
        EXPECT_EQ(fileBytes(file), ofTwo);
        sweepBeside(file.toStdString());
        ASSERT_FALSE(HasFailure());
    }
    QFile::remove(file);
}

// Oracle: what is on the disk. That a file is missing in the list is not told: it is no work.
TEST_P(EachCall, OfTheListOfRecentFilesThatFailsLeavesTheOldListOrTheNew)
{
    const QString in = stateFolder();
    RecentFiles recent;
    recent.clear();
    recent.add(QStringLiteral("/a/first.stillbay"));
    const QStringList old = recent.paths();
    const QString second = QStringLiteral("/a/second.stillbay");
    const int calls = callsOf(in, [&] { recent.add(second); });
    const QStringList fresh = recent.paths();
    ASSERT_EQ(fresh.size(), 2);
    for (int at = 1; at <= calls; ++at) {
        SCOPED_TRACE(at);
        recent.clear();
        recent.add(QStringLiteral("/a/first.stillbay"));
        {
            const Armed armed(in, at, fault.how());
            recent.add(second);
        }
        EXPECT_TRUE(recent.paths() == old || recent.paths() == fresh);
        recent.add(second);
        EXPECT_EQ(recent.paths(), fresh);
        sweepBeside((in + QStringLiteral("/x")).toStdString());
        ASSERT_FALSE(HasFailure());
    }
    recent.clear();
}

// Oracle: what is on the disk. Both ways of a command: over a file, and where no file may be.
TEST_P(EachCall, OfACommandsCraftThatFailsLeavesNothingHalf)
{
    const stillbay::Setup craft = sampleSetup("quarry");
    const QByteArray old = "the builder's own";
    for (const bool replace : {true, false}) {
        const auto begin = [&] {
            const QString in = freshFolder();
            if (replace)
                put(in + QStringLiteral("/out.stillbay"), old);
            return in;
        };
        const auto save = [&](const QString& in) {
            return saveCraft(craft, (in + QStringLiteral("/out.stillbay")).toStdString(), replace);
        };
        const QString counted = begin();
        const int calls = callsOf(counted, [&] { EXPECT_TRUE(save(counted)); });
        ASSERT_GE(calls, 5);
        const QByteArray fresh = fileBytes(counted + QStringLiteral("/out.stillbay"));
        ASSERT_FALSE(fresh.isEmpty());
        for (int at = 1; at <= calls; ++at) {
            SCOPED_TRACE(at);
            const QString in = begin(), path = in + QStringLiteral("/out.stillbay");
            Result<void> saved;
            {
                const Armed armed(in, at, fault.how());
                saved = save(in);
            }
            EXPECT_EQ(fileBytes(path), saved ? fresh : replace ? old : QByteArray());
            EXPECT_EQ(QFile::exists(path), saved || replace);
            if (!saved) {
                EXPECT_EQ(displayText(saved.error().what), fault.words());
            }
            EXPECT_EQ(foreignIn(in, {QStringLiteral("out.stillbay")}), QStringList());
            EXPECT_EQ(save(in).has_value(), replace || !saved);
            EXPECT_EQ(fileBytes(path), fresh);
            EXPECT_EQ(QDir(in).entryList(QDir::Files | QDir::Hidden).size(), 1);
            ASSERT_FALSE(HasFailure());
        }
    }
}

}  // namespace
}  // namespace stillbay::ui
