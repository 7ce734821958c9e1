// SPDX-License-Identifier: MIT
#include "core/setup/fields.h"
#include "tests/ui/samples.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/through_tubes_chart.h"
#include "ui/document/mount_layout.h"
#include "ui/panels/craft_form.h"
#include "ui/panels/findings_panel.h"
#include "ui/panels/tube_bench.h"
#include "ui/widgets/field_row.h"
#include "ui/widgets/number_box.h"
#include "ui/window/main_window.h"
#include "ui/window/tuning_view.h"

#include <QAction>
#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QDropEvent>
#include <QLabel>
#include <QMessageBox>
#include <QMimeData>
#include <QPushButton>
#include <QSlider>
#include <QStyle>
#include <QStyleOptionSlider>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <QToolButton>
#include <QWheelEvent>
#include <gtest/gtest.h>
#include <qwt_plot_curve.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace stillbay::ui {
namespace {

constexpr int kPatience_ms = 20000;

struct Window : testing::Test {
    Window()
    {
        window.resize(1280, 800);
        window.show();
    }

    ~Window() override { window.document().undoStack().clear(); }  // closes without a question

    void settle()
    {
        ASSERT_TRUE(
            QTest::qWaitFor([this] { return window.recompute().isCurrent(); }, kPatience_ms));
        QCoreApplication::processEvents();
    }

    void open(const char* sample)
    {
        ASSERT_TRUE(window.openFile(samplePath(sample)));
        settle();
    }

    template <class T>
    T* named(const QString& accessibleName)
    {
        for (T* widget : window.findChildren<T*>())
            if (widget->accessibleName() == accessibleName)
                return widget;
        ADD_FAILURE() << "no widget named " << qPrintable(accessibleName);
        return nullptr;
    }

    QString visibleRefusal() const
    {
        for (const QLabel* label : window.findChildren<QLabel*>())
            if (!label->isHidden() && label->text().startsWith(QStringLiteral("Not ")))
                return label->text();
        return {};
    }

    MainWindow window;
    Document& document = window.document();
};

// Takes the handle of a slider with the left button and moves it by so many pixels, in steps.
void drag(QSlider& slider, int pixels)
{
    QStyleOptionSlider option;
    option.initFrom(&slider);
    option.subControls = QStyle::SC_SliderGroove | QStyle::SC_SliderHandle;
    option.orientation = slider.orientation();
    option.minimum = slider.minimum();
    option.maximum = slider.maximum();
    option.sliderPosition = slider.sliderPosition();
    option.sliderValue = slider.value();
    const QRect handle = slider.style()->subControlRect(QStyle::CC_Slider, &option,
                                                        QStyle::SC_SliderHandle, &slider);
    const QPoint start = handle.center();
    QTest::mousePress(&slider, Qt::LeftButton, {}, start);
    for (int step = 1; step <= 8; ++step)
        QTest::mouseMove(&slider, start + QPoint(pixels * step / 8, 0), 5);
    QTest::mouseRelease(&slider, Qt::LeftButton, {}, start + QPoint(pixels, 0));
}

std::vector<QPointF> samplesOf(const QwtPlotCurve& curve)
{
    std::vector<QPointF> samples;
    for (std::size_t k = 0; k < curve.dataSize(); ++k)
        samples.push_back(curve.sample(static_cast<int>(k)));
    return samples;
}

class WindowWithSample : public Window, public testing::WithParamInterface<const char*> {};

TEST_P(WindowWithSample, DraggingMovesBothChartsAndUndoAllComesBack)
{
    open(GetParam());
    const stillbay::Setup start = document.setup();
    TuningView& tuning = window.tuning();
    const auto through = samplesOf(tuning.throughTubes().curve(2));
    const auto throttle = samplesOf(tuning.acrossThrottle().totalCurve());
    const QString words = tuning.findingsPanel().text();
    ASSERT_GT(through.size(), 100u);
    ASSERT_GT(throttle.size(), 100u);

    drag(*named<QSlider>(QStringLiteral("Free length, slider")), 12);
    settle();
    EXPECT_GT(document.setup().mounts.free_length_mm, start.mounts.free_length_mm + 1.0);
    EXPECT_NE(samplesOf(tuning.throughTubes().curve(2)), through);
    EXPECT_NE(samplesOf(tuning.acrossThrottle().totalCurve()), throttle);
    EXPECT_NE(tuning.findingsPanel().text(), words);

    drag(*named<QSlider>(QStringLiteral("Stretch, slider")), -25);
    settle();
    EXPECT_LT(drawnStretch(document.setup().mounts), drawnStretch(start.mounts) - 0.005);
    EXPECT_EQ(document.undoStack().count(), 2);  // one for each drag

    while (document.undoStack().canUndo())
        document.undoStack().undo();
    settle();
    EXPECT_EQ(document.setup(), start);
    EXPECT_EQ(samplesOf(tuning.throughTubes().curve(2)), through);
    EXPECT_EQ(samplesOf(tuning.acrossThrottle().totalCurve()), throttle);
    EXPECT_EQ(tuning.findingsPanel().text(), words);
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
    const QString words = window.tuning().findingsPanel().text();
    NumberBox* const box = named<NumberBox>(QStringLiteral("Free length of the tubes"));
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("1"));
    QTest::keyClick(box, Qt::Key_Return);
    settle();
    EXPECT_TRUE(window.tuning().findingsPanel().text().contains(QStringLiteral("No answer")));
    EXPECT_TRUE(window.tuning().throughTubes().isStale());
    document.undoStack().undo();
    settle();
    EXPECT_EQ(window.tuning().findingsPanel().text(), words);
    EXPECT_FALSE(window.tuning().throughTubes().isStale());
}

TEST_F(Window, TypedFieldsReachTheCraftAndRefusedOnesDoNot)
{
    open("reedbed");
    const auto type = [this](const char* name, const char* keys) {
        NumberBox* const box = named<NumberBox>(QString::fromLatin1(name));
        box->selectAll();
        QTest::keyClicks(box, QString::fromLatin1(keys));
        QTest::keyClick(box, Qt::Key_Return);
        return box;
    };
    type("Tube: outer diameter", "9,5");
    EXPECT_EQ(document.setup().tube.outer_diameter_mm, 9.5);
    type("Motors: mass", "61");
    EXPECT_EQ(document.setup().drive.motor.mass_g, 61.0);
    type("bay part 2: centre x", "-12.25");
    EXPECT_EQ(document.setup().bay.parts[1].centre_mm[0], -12.25);
    EXPECT_TRUE(visibleRefusal().isEmpty());

    const stillbay::Setup before = document.setup();
    NumberBox* box = type("Tube: outer diameter", "1000");  // out of range
    EXPECT_EQ(box->value(), 9.5);
    EXPECT_TRUE(visibleRefusal().contains(QStringLiteral("1000 is outside")));
    box = type("Tube: bore", "9.5");  // in range, but not smaller than the outside
    EXPECT_EQ(box->value(), 5.0);
    EXPECT_FALSE(visibleRefusal().isEmpty());
    EXPECT_EQ(document.setup(), before);
}

template <class Owner>
void addPaths(std::set<QString>& paths, const QString& place)
{
    for (const Field<Owner>& field : fieldsOf<Owner>())
        paths.insert(place + u'.' + QString::fromUtf8(field.key));
}

std::string missingFrom(const std::set<QString>& have, const std::set<QString>& wanted)
{
    std::string missing;
    for (const QString& path : wanted)
        if (!have.count(path))
            missing += path.toStdString() + ' ';
    return missing.empty() ? "nothing" : missing;
}

// Oracle: the field table itself.
TEST_F(Window, TheFormHoldsEveryFieldOfTheSetup)
{
    for (const char* sample : kSampleNames) {
        open(sample);
        const stillbay::Setup& setup = document.setup();
        std::set<QString> expected;
        addPaths<ArmSection>(expected, QStringLiteral("airframe.arm"));
        addPaths<Motor>(expected, QStringLiteral("drive.motor"));
        addPaths<Propeller>(expected, QStringLiteral("drive.propeller"));
        addPaths<Battery>(expected, QStringLiteral("drive.battery"));
        addPaths<Drive>(expected, QStringLiteral("drive"));
        addPaths<Bay>(expected, QStringLiteral("bay"));
        addPaths<Camera>(expected, QStringLiteral("camera"));
        addPaths<TubeStock>(expected, QStringLiteral("tube"));
        addPaths<Mounts>(expected, QStringLiteral("mounts"));
        addPaths<Flight>(expected, QStringLiteral("flight"));
        addPaths<Limits>(expected, QStringLiteral("limits"));
        const auto row = [](const char* list, std::size_t k) {
            return QStringLiteral("%1[%2]").arg(QLatin1String(list)).arg(k);
        };
        for (std::size_t k = 0; k < setup.airframe.parts.size(); ++k)
            addPaths<Part>(expected, row("airframe.parts", k));
        for (std::size_t k = 0; k < setup.airframe.arms.size(); ++k)
            addPaths<Arm>(expected, row("airframe.arms", k));
        for (std::size_t k = 0; k < setup.bay.parts.size(); ++k)
            addPaths<Part>(expected, row("bay.parts", k));
        for (std::size_t k = 0; k < setup.mounts.points.size(); ++k) {
            addPaths<MountPoint>(expected, row("mounts.points", k));
            if (setup.mounts.drilled()) {
                expected.erase(row("mounts.points", k) + QStringLiteral(".azimuth_deg"));
                expected.erase(row("mounts.points", k) + QStringLiteral(".elevation_deg"));
            } else {
                expected.erase(row("mounts.points", k) + QStringLiteral(".anchor_mm"));
            }
        }
        QTest::qWait(10);  // rows of the craft before are taken down later
        std::set<QString> shown;
        for (const FieldRow* field : window.tuning().form().findChildren<FieldRow*>())
            shown.insert(field->spec().path);
        EXPECT_TRUE(shown == expected) << sample << ": missing " << missingFrom(shown, expected)
                                       << ", not in the table " << missingFrom(expected, shown);
    }
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
        fadedTurns += window.tuning().throughTubes().isStale() ? 1 : 0;
    }
    EXPECT_LT(fadedTurns, 50);  // a busy machine may be late at times
}

TEST_F(Window, ScrollingOverTheFormChangesNothing)
{
    open("reedbed");
    window.tuning().setFocus();
    const stillbay::Setup start = document.setup();
    int widgets = 0;
    for (QWidget* widget : window.tuning().form().findChildren<QWidget*>()) {
        if (!qobject_cast<QComboBox*>(widget) && !qobject_cast<NumberBox*>(widget))
            continue;
        ++widgets;
        QWheelEvent wheel({5, 5}, {5, 5}, {}, {0, -120}, Qt::NoButton, Qt::NoModifier,
                          Qt::NoScrollPhase, false);
        QApplication::sendEvent(widget, &wheel);
    }
    EXPECT_GT(widgets, 50);
    EXPECT_EQ(document.setup(), start);
}

TEST_F(Window, DrillingAndPlanningAreOneStepEach)
{
    open("reedbed");
    const stillbay::Setup start = document.setup();
    QComboBox* const choice = named<QComboBox>(QStringLiteral("Mounts: planned or drilled"));
    QTest::keyClick(choice, Qt::Key_Down);
    ASSERT_TRUE(document.setup().mounts.drilled());
    ASSERT_TRUE(named<NumberBox>(QStringLiteral("tube 1: airframe hole x")));
    settle();
    EXPECT_TRUE(window.tuning().findingsPanel().text().contains(QStringLiteral("cruise")));
    QTest::keyClick(choice, Qt::Key_Up);
    EXPECT_FALSE(document.setup().mounts.drilled());
    EXPECT_EQ(document.undoStack().count(), 2);
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
}

TEST_F(Window, RowsAreAddedAndRemovedInOneStepEach)
{
    open("reedbed");
    const stillbay::Setup start = document.setup();
    for (const char* thing : {"Add arm", "Add airframe part", "Add bay part", "Add tube"}) {
        const auto buttons = window.findChildren<QPushButton*>();
        const auto add = std::find_if(buttons.begin(), buttons.end(), [&](QPushButton* button) {
            return button->text() == QLatin1String(thing);
        });
        ASSERT_NE(add, buttons.end()) << thing;
        (*add)->click();
    }
    EXPECT_EQ(document.undoStack().count(), 4);
    EXPECT_EQ(document.setup().airframe.arms.size(), start.airframe.arms.size() + 1);
    EXPECT_EQ(document.setup().mounts.points.size(), start.mounts.points.size() + 1);
    named<QToolButton>(QStringLiteral("Remove arm 1"))->click();
    EXPECT_EQ(document.setup().airframe.arms.size(), start.airframe.arms.size());
    while (document.undoStack().canUndo())
        document.undoStack().undo();
    EXPECT_EQ(document.setup(), start);
}

TEST_F(Window, AnEstimateCanBeReplacedByAMeasurementAndBack)
{
    open("saltmarsh");
    ASSERT_FALSE(document.setup().drive.propeller.thrust_coefficient);
    QCheckBox* const estimated =
        named<QCheckBox>(QStringLiteral("Propellers: thrust coefficient, estimated"));
    NumberBox* const box = named<NumberBox>(QStringLiteral("Propellers: thrust coefficient"));
    EXPECT_TRUE(estimated->isChecked());
    EXPECT_TRUE(box->text().startsWith(QStringLiteral("≈")));
    EXPECT_TRUE(box->isReadOnly());
    estimated->setChecked(false);
    ASSERT_TRUE(document.setup().drive.propeller.thrust_coefficient);
    EXPECT_EQ(*document.setup().drive.propeller.thrust_coefficient, box->value());
    EXPECT_FALSE(box->text().startsWith(QStringLiteral("≈")));
    estimated->setChecked(true);
    EXPECT_FALSE(document.setup().drive.propeller.thrust_coefficient);
}

// The question before unsaved work is lost, answered from a timer because it waits for an answer.
struct Answer {
    explicit Answer(QMessageBox::StandardButton button)
    {
        QObject::connect(&m_timer, &QTimer::timeout, [this, button] {
            auto* const box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box)
                return;
            ++asked;
            box->button(button)->click();
        });
        m_timer.start(10);
    }

    int asked = 0;

private:
    QTimer m_timer;
};

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
    QApplication::setActiveWindow(&window);
    NumberBox* const box = named<NumberBox>(QStringLiteral("Tube: outer diameter"));
    box->setFocus();
    box->selectAll();
    QTest::keyClicks(box, QStringLiteral("9.25"));
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("mine.stillbay"));
    ASSERT_TRUE(window.saveFile(path));
    EXPECT_EQ(readSetup(fileBytes(path).toStdString()).value().setup.tube.outer_diameter_mm, 9.25);
}

TEST_F(Window, ADroppedCraftIsOpenedAndOtherFilesAreNotTaken)
{
    const auto dragOver = [this](const QString& path) {
        QMimeData data;
        data.setUrls({QUrl::fromLocalFile(path)});
        QDragEnterEvent enter({10, 10}, Qt::CopyAction, &data, Qt::LeftButton, {});
        enter.setAccepted(false);
        QApplication::sendEvent(&window, &enter);
        if (!enter.isAccepted())
            return false;
        QDropEvent drop({10, 10}, Qt::CopyAction, &data, Qt::LeftButton, {});
        QApplication::sendEvent(&window, &drop);
        return true;
    };
    EXPECT_FALSE(dragOver(QStringLiteral("/tmp/picture.png")));
    EXPECT_FALSE(document.hasCraft());
    EXPECT_TRUE(dragOver(samplePath("saltmarsh")));
    EXPECT_EQ(document.setup(), sampleSetup("saltmarsh"));
}

TEST_F(Window, RemembersItsSize)
{
    window.resize(1111, 777);
    window.close();
    MainWindow next;
    next.show();
    EXPECT_EQ(next.size(), QSize(1111, 777));
}

}  // namespace
}  // namespace stillbay::ui
