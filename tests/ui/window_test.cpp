// SPDX-License-Identifier: MIT
#include "core/setup/mount_layout.h"
#include "tests/ui/files_fixture.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/transmissibility_chart.h"
#include "ui/findings/findings_panel.h"
#include "ui/widgets/number_box.h"
#include "ui/window/tuning_view.h"

#include <QDropEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>

namespace stillbay::ui {
namespace {

class WindowWithSample : public Window, public testing::WithParamInterface<const char*> {};

TEST_P(WindowWithSample, DraggingMovesBothChartsAndUndoAllComesBack)
{
    open(GetParam());
    const stillbay::Setup start = document.setup();
    TuningView& tuning = window.tuning();
    const auto through = samplesOf(tuning.transmissibilityChart().curve(2));
    const auto throttle = samplesOf(tuning.acrossThrottle().totalCurve());
    const QString text = tuning.findingsPanel().text();
    ASSERT_GT(through.size(), 100u);
    ASSERT_GT(throttle.size(), 100u);

    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 12);
    settle();
    EXPECT_GT(document.setup().mounts.free_length_mm, start.mounts.free_length_mm + 1.0);
    EXPECT_NE(samplesOf(tuning.transmissibilityChart().curve(2)), through);
    EXPECT_NE(samplesOf(tuning.acrossThrottle().totalCurve()), throttle);
    EXPECT_NE(tuning.findingsPanel().text(), text);

    drag(*named<QSlider>(QStringLiteral("Stretch, slider")), -25);
    settle();
    EXPECT_LT(drawnStretch(document.setup().mounts), drawnStretch(start.mounts) - 0.005);
    EXPECT_EQ(document.undoStack().count(), 2);  // one for each drag

    while (document.undoStack().canUndo())
        document.undoStack().undo();
    settle();
    EXPECT_EQ(document.setup(), start);
    EXPECT_EQ(samplesOf(tuning.transmissibilityChart().curve(2)), through);
    EXPECT_EQ(samplesOf(tuning.acrossThrottle().totalCurve()), throttle);
    EXPECT_EQ(tuning.findingsPanel().text(), text);
    EXPECT_FALSE(window.isWindowModified());
}

TEST_P(WindowWithSample, SavesAndOpensAgainTheSame)
{
    open(GetParam());
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    EXPECT_TRUE(window.isWindowModified());
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(window.saveFile(path));
    EXPECT_FALSE(window.isWindowModified());
    EXPECT_EQ(window.windowTitle(), QStringLiteral("mine.stillbay[*] — Stillbay"));
    const stillbay::Setup saved = document.setup();

    ASSERT_TRUE(window.openFile(samplePath("reedbed")));
    ASSERT_TRUE(window.openFile(path));
    EXPECT_EQ(document.setup(), saved);
    EXPECT_EQ(fileBytes(path), fileBytes(document.path()));
}

INSTANTIATE_TEST_SUITE_P(Samples, WindowWithSample, testing::ValuesIn(kSampleNames));

TEST_F(Window, InADrilledCraftTheStretchSliderMovesTheFreeLength)
{
    open("quarry");
    const Mounts start = document.setup().mounts;
    ASSERT_TRUE(start.drilled());
    QSlider* const slider = named<QSlider>(QStringLiteral("Stretch, slider"));
    drag(*slider, 50);
    const Mounts& now = document.setup().mounts;
    EXPECT_LT(now.free_length_mm, start.free_length_mm - 0.2);
    EXPECT_EQ(now.points, start.points);
    EXPECT_FALSE(now.stretch);
    // The slider moves by whole percents, the free length is rounded to 0.01 mm.
    EXPECT_NEAR(drawnStretch(now), 1.0 + slider->value() / 100.0, 1e-3);
    EXPECT_EQ(document.undoStack().count(), 1);
}

TEST_F(Window, ABadFileKeepsTheCraftAndSaysWhere)
{
    open("reedbed");
    const stillbay::Setup start = document.setup();
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("broken.stillbay"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(fileBytes(samplePath("reedbed")).replace("\"bore_mm\": 5", "\"bore_mm\": 8"));
    file.close();
    EXPECT_FALSE(window.openFile(path));
    EXPECT_EQ(document.setup(), start);
    EXPECT_EQ(document.path(), samplePath("reedbed"));
    EXPECT_TRUE(window.message().contains(QStringLiteral("broken.stillbay")));
    EXPECT_TRUE(window.message().contains(QStringLiteral("tube.bore_mm")));
    EXPECT_FALSE(window.openFile(folder.filePath(QStringLiteral("missing.stillbay"))));
    EXPECT_TRUE(window.message().contains(QStringLiteral("No such file")));
    ASSERT_TRUE(window.openFile(samplePath("quarry")));
    EXPECT_TRUE(window.message().isEmpty());
}

TEST_F(Window, ACraftWithoutAnAnswerIsSaidAndUndoHeals)
{
    open("reedbed");
    const QString text = window.verdict().text();
    NumberBox* const box = named<NumberBox>(QStringLiteral("Free length of the tubes"));
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("1"));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
    EXPECT_TRUE(window.verdict().text().contains(QStringLiteral("No answer")));
    EXPECT_TRUE(window.tuning().transmissibilityChart().isStale());
    document.undoStack().undo();
    settle();
    EXPECT_EQ(window.verdict().text(), text);
    EXPECT_FALSE(window.tuning().transmissibilityChart().isStale());
}

// During a drag each answer is a step behind the hand; the charts must not look stale for that.
TEST_F(Window, ChartsStayBrightDuringALongDrag)
{
    open("reedbed");
    int fadedTurns = 0;
    for (int step = 0; step < 100; ++step) {
        ASSERT_TRUE(document.edit(
            QStringLiteral("x"), QStringLiteral("mounts.free_length_mm"),
            [step](stillbay::Setup& setup) { setup.mounts.free_length_mm = 20.0 + 0.1 * step; }));
        QTest::qWait(5);
        fadedTurns += window.tuning().transmissibilityChart().isStale() ? 1 : 0;
    }
    EXPECT_LT(fadedTurns, 50);  // a busy machine may be late at times
}

// Also while the answer to the edit before arrives.
TEST_F(Window, SaysUpToDateOnlyWhenItIs)
{
    open("reedbed");
    const QString upToDate = QStringLiteral("Up to date");
    const QLabel* const state = named<QLabel>(QStringLiteral("State of the numbers"));
    ASSERT_EQ(state->text(), upToDate);
    for (int step = 0; step < 60; ++step) {
        change([step](auto& s) { s.mounts.free_length_mm = 20.5 + 0.1 * step; });
        EXPECT_EQ(state->text(), QStringLiteral("Computing…"));
        QTest::qWait(1 + step % 12);
        EXPECT_EQ(state->text() == upToDate, window.recompute().isCurrent()) << step;
    }
    settle();
    EXPECT_EQ(state->text(), upToDate);
}

TEST_F(Window, AsksBeforeUnsavedWorkIsLost)
{
    open("reedbed");
    EXPECT_TRUE(window.close());  // nothing to lose, no question
    window.show();
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    {
        const Answer cancel(QMessageBox::Cancel);
        EXPECT_FALSE(window.close());
        EXPECT_EQ(cancel.asked, 1);
        EXPECT_TRUE(window.isVisible());
    }
    {
        const Answer discard(QMessageBox::Discard);
        EXPECT_TRUE(window.close());
        EXPECT_EQ(discard.asked, 1);
    }
}

TEST_F(Window, SavesTheOpenFileWhenAskedToOnClosing)
{
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(QFile::copy(samplePath("reedbed"), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    ASSERT_TRUE(window.openFile(path));
    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 40);
    const stillbay::Setup edited = document.setup();
    const Answer save(QMessageBox::Save);
    EXPECT_TRUE(window.close());
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup, edited);
}

// A number that is typed, but not yet entered, is saved too.
TEST_F(Window, SavesWhatIsStillBeingTyped)
{
    open("reedbed");
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    NumberBox* const box = named<NumberBox>(QStringLiteral("Tube: outer diameter"));
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("9.25"));
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(window.saveFile(path));
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup.tube.outer_diameter_mm, 9.25);
}

// What happens to files that are dragged over a part of the window and let go there.
bool dropOn(QWidget& target, const QList<QUrl>& files)
{
    QMimeData data;
    data.setUrls(files);
    data.setText(QStringLiteral("a name, as file managers add it"));
    QDragEnterEvent enter({5, 5}, Qt::CopyAction, &data, Qt::LeftButton, {});
    enter.setAccepted(false);
    QApplication::sendEvent(&target, &enter);
    QDragMoveEvent move({6, 6}, Qt::CopyAction, &data, Qt::LeftButton, {});
    move.setAccepted(false);
    QApplication::sendEvent(&target, &move);
    EXPECT_EQ(move.isAccepted(), enter.isAccepted());
    if (!enter.isAccepted())
        return false;
    QDropEvent drop({6, 6}, Qt::CopyAction, &data, Qt::LeftButton, {});
    QApplication::sendEvent(&target, &drop);
    return true;
}

TEST_F(Window, ADroppedCraftIsOpenedWhereverItFalls)
{
    EXPECT_TRUE(dropOn(window, {QUrl::fromLocalFile(samplePath("saltmarsh"))}));
    EXPECT_EQ(document.setup(), sampleSetup("saltmarsh"));
    settle();
    QWidget* const chart = &window.tuning().transmissibilityChart();
    auto* const field = named<NumberBox>(QStringLiteral("Tube: outer diameter"));
    QLineEdit* const typing = field->findChild<QLineEdit*>();
    int round = 0;
    for (QWidget* target : {chart, static_cast<QWidget*>(field), static_cast<QWidget*>(typing)}) {
        const char* const sample = kSampleNames[++round % 2];
        EXPECT_TRUE(dropOn(*target, {QUrl::fromLocalFile(samplePath(sample))}));
        EXPECT_EQ(document.setup(), sampleSetup(sample)) << round;
    }
}

TEST_F(Window, OtherFilesAreNotTaken)
{
    open("reedbed");
    const stillbay::Setup before = document.setup();
    const QTemporaryDir folder;
    const QString picture = folder.filePath(QStringLiteral("picture.png"));
    ASSERT_TRUE(QFile::copy(samplePath("quarry"), picture));
    const QUrl craft = QUrl::fromLocalFile(samplePath("quarry"));
    auto* const field = named<NumberBox>(QStringLiteral("Tube: outer diameter"));
    QLineEdit* const typing = field->findChild<QLineEdit*>();
    const QString text = typing->text();
    const QList<QList<QUrl>> others = {
        {QUrl::fromLocalFile(picture)},
        {craft, QUrl::fromLocalFile(samplePath("reedbed"))},
        {QUrl(QStringLiteral("https://example.org/craft.stillbay"))},
        {QUrl::fromLocalFile(folder.filePath(QStringLiteral("missing.stillbay")))}};
    for (const QList<QUrl>& files : others)
        for (QWidget* target : {static_cast<QWidget*>(&window), static_cast<QWidget*>(typing)})
            EXPECT_FALSE(dropOn(*target, files)) << qPrintable(files.front().toString());
    EXPECT_EQ(document.setup(), before);
    EXPECT_EQ(typing->text(), text);
}

TEST_F(Window, RemembersItsSize)
{
    const QSize before = window.size();
    window.resize(window.minimumSizeHint().width(),
                  700);  // as wide as it must be: newer Qt fits it to the screen
    const QSize changed = window.size();
    ASSERT_NE(changed, before);
    window.close();
    MainWindow next;
    next.show();
    EXPECT_EQ(next.size(), changed);
}

}  // namespace
}  // namespace stillbay::ui
