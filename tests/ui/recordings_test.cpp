// SPDX-License-Identifier: MIT
#include "core/calibrate/named_reading.h"
#include "core/recording/read_recording.h"
#include "core/setup/sources.h"
#include "tests/ui/files_fixture.h"
#include "ui/charts/envelope.h"
#include "ui/charts/measured_chart.h"
#include "ui/charts/throttle_chart.h"
#include "ui/charts/trace_chart.h"
#include "ui/recordings/column_pane.h"
#include "ui/recordings/correction_pane.h"
#include "ui/recordings/flight_notes_pane.h"
#include "ui/recordings/hang_pane.h"
#include "ui/recordings/reading_strip.h"
#include "ui/recordings/recording_list.h"
#include "ui/recordings/recording_page.h"
#include "ui/recordings/recordings_view.h"
#include "ui/recordings/result_part.h"
#include "ui/recordings/said_pane.h"
#include "ui/recordings/sample_recordings.h"
#include "ui/widgets/message_bar.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/section.h"

#include <QComboBox>
#include <QDate>
#include <QDropEvent>
#include <QElapsedTimer>
#include <QEventLoop>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLabel>
#include <QListWidget>
#include <QMimeData>
#include <QPushButton>
#include <QTableWidget>
#include <QTimer>
#include <qwt_scale_widget.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>
#include <numbers>
#include <random>

namespace stillbay::ui {
namespace {

// Oracle: brute force over the samples, series and stretches drawn at random.
TEST(EnvelopeTest, GivesTheExtentsOfAnyStretch)
{
    std::mt19937 draw(7);
    for (const std::size_t count : {1U, 15U, 16U, 17U, 300U, 5000U}) {
        auto values = std::make_shared<std::vector<double>>();
        for (std::size_t k = 0; k < count; ++k)
            values->push_back(static_cast<double>(draw() % 2001) - 700.0);
        const Envelope envelope(values);
        for (int k = 0; k < 200; ++k) {
            std::size_t from = draw() % count, to = draw() % count;
            if (from > to)
                std::swap(from, to);
            ++to;
            const auto [least, most] =
                std::minmax_element(values->begin() + static_cast<std::ptrdiff_t>(from),
                                    values->begin() + static_cast<std::ptrdiff_t>(to));
            EXPECT_EQ(envelope.of(from, to), (Extent{*least, *most})) << from << " to " << to;
        }
    }
}

// Two decaying tones, by hand: 6.25 Hz and 11 Hz, loss factor 0.1 both, four plucks of 2 s at 400
// samples a second, with a little noise.
QByteArray pluckTable(int rows = 3200)
{
    std::mt19937 draw(3);
    QByteArray text = "time (s),up (m/s²),left (m/s²),lamp\n";
    for (int k = 0; k < rows; ++k) {
        const double t = k / 400.0;
        const double since = std::fmod(t, 2.0) - 0.25;
        double up = 0.0, left = 0.0;
        if (since >= 0.0)
            for (const auto& [f, a] : {std::pair{6.25, 3.0}, std::pair{11.0, 2.0}}) {
                const double omega = 2.0 * std::numbers::pi * f;
                const double tone =
                    a * std::exp(-0.05 * omega * since) * std::sin(omega * since + 0.7 * a);
                up += tone;
                left += 0.4 * tone * (a - 2.2);
            }
        const auto noise = [&draw] {
            return 0.004 * (static_cast<double>(draw() % 1000) / 500.0 - 1.0);
        };
        text += QByteArray::number(t, 'f', 4) + ',' + QByteArray::number(up + noise(), 'f', 5) +
                ',' + QByteArray::number(left + noise(), 'f', 5) + ",1\n";
    }
    return text;
}

struct RecordingsTest : WindowAndFiles {
    RecordingsView& view = window.recordings();

    void openCraft()
    {
        craft = copyOf("reedbed", QStringLiteral("craft.stillbay"));
        ASSERT_TRUE(window.openFile(craft));
        settle();
        showPage(view);
    }

    QString file(const QString& name, const QByteArray& bytes) const
    {
        const QString path = folder.filePath(name);
        put(path, bytes);
        return path;
    }

    void wait()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return !view.isBusy() && window.recompute().isCurrent(); }, kPatience_ms));
        QCoreApplication::processEvents();
    }

    QString row(int k) const { return view.list().list().item(k)->text(); }

    QString craft;
};

TEST_F(RecordingsTest, ARecordingIsNamedReadAndLaidOverThePrediction)
{
    openCraft();
    EXPECT_EQ(view.list().list().count(), 2);  // hang test and flight notes
    const stillbay::Setup before = document.setup();
    const QString path = file(QStringLiteral("bay plucked.csv"), pluckTable());
    view.addFiles({path});
    EXPECT_EQ(document.undoStack().count(), 1);
    ASSERT_EQ(document.setup().recordings.size(), 1U);
    EXPECT_EQ(document.setup().recordings[0].kind, RecordingKind::Pluck);
    wait();
    EXPECT_EQ(row(0), QStringLiteral("bay plucked.csv\nPluck"));
    EXPECT_TRUE(view.messages().isHidden()) << qPrintable(view.messages().text());
    EXPECT_NEAR(view.page().trace().end(), 8.0, 0.01);

    // Oracle: the tones the table was made of; a ring-down finds them within a percent.
    const MeasuredShown& shown = view.page().result().chart().measured();
    ASSERT_EQ(shown.measured.size(), 2U) << qPrintable(view.correction().text());
    EXPECT_NEAR(shown.measured[0].x, 6.25, 0.06);
    EXPECT_NEAR(shown.measured[1].x, 11.0, 0.11);
    EXPECT_EQ(shown.predicted.size(), 6U);  // the bay's bench modes
    EXPECT_FALSE(shown.curves.empty());
    EXPECT_GT(view.page().result().chart().table().rows(), 20U);
    EXPECT_TRUE(view.correction().text().contains(QStringLiteral("The bay rings at 6.2")))
        << qPrintable(view.correction().text());

    // Named again it is not named twice.
    view.addFiles({path});
    EXPECT_EQ(document.setup().recordings.size(), 1U);
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
}

// Saved, the file says the way from its own folder; opened or saved elsewhere, the recording is
// still the same file. It is never copied.
TEST_F(RecordingsTest, TheCraftsFileNamesItFromItsOwnFolder)
{
    openCraft();
    QDir(folder.path()).mkpath(QStringLiteral("measured/here"));
    QDir(folder.path()).mkpath(QStringLiteral("elsewhere"));
    const QString path = file(QStringLiteral("measured/here/a.csv"), pluckTable(1200));
    view.addFiles({path});
    const auto written = [](const QString& where) {
        QFile saved(where);
        EXPECT_TRUE(saved.open(QIODevice::ReadOnly));
        return QJsonDocument::fromJson(
                   saved.readAll())[QStringLiteral("recordings")][0][QStringLiteral("file")]
            .toString();
    };
    ASSERT_TRUE(window.saveFile(craft));
    EXPECT_EQ(written(craft), QStringLiteral("measured/here/a.csv"));
    const QString other = folder.filePath(QStringLiteral("elsewhere/b.stillbay"));
    ASSERT_TRUE(window.saveFile(other));
    EXPECT_EQ(written(other), QStringLiteral("../measured/here/a.csv"));
    for (const QString& where : {craft, other}) {
        ASSERT_TRUE(window.openFile(where));
        EXPECT_EQ(document.setup().recordings.at(0).file, path.toStdString());
        EXPECT_FALSE(document.isModified());
    }
    EXPECT_EQ(QDir(folder.filePath(QStringLiteral("elsewhere"))).entryList(QDir::Files).size(), 1);
}

TEST_F(RecordingsTest, WhatIsMissingOrNoRecordingIsSaidAndNothingIsLost)
{
    openCraft();
    const QString prose =
        file(QStringLiteral("letter.txt"), "Dear builder,\nthis is no table at all.\n");
    const QString gone = file(QStringLiteral("gone.csv"), pluckTable(800));
    view.addFiles({gone});
    wait();
    ASSERT_TRUE(QFile::remove(gone));
    view.addFiles({prose});
    wait();
    EXPECT_EQ(row(0), QStringLiteral("gone.csv\nmissing"));
    EXPECT_FALSE(view.messages().isHidden());
    EXPECT_TRUE(view.messages().text().contains(QStringLiteral("letter.txt cannot be read")))
        << qPrintable(view.messages().text());
    view.list().choose({Chosen::What::Recording, 0});
    wait();
    EXPECT_TRUE(view.messages().text().contains(QStringLiteral("gone.csv is missing")));
    EXPECT_EQ(document.setup().recordings.size(), 2U);
    put(gone, pluckTable(800));  // it is back
    view.list().choose({Chosen::What::Recording, 1});
    view.list().choose({Chosen::What::Recording, 0});
    wait();
    EXPECT_TRUE(view.messages().isHidden()) << qPrintable(view.messages().text());
    EXPECT_NEAR(view.page().trace().end(), 2.0, 0.01);
}

TEST_F(RecordingsTest, ReadingCanBeStoppedAndBegunAgain)
{
    openCraft();
    view.addFiles({file(QStringLiteral("long.csv"), pluckTable())});
    EXPECT_TRUE(view.isBusy());
    EXPECT_TRUE(view.page().strip().stopButton().isVisible());
    view.page().strip().stopButton().click();
    EXPECT_FALSE(view.isBusy());
    QTest::qWait(50);
    EXPECT_EQ(view.page().strip().stopButton().text(), QStringLiteral("Read again"));
    EXPECT_EQ(view.page().trace().table().rows(), 0U);
    view.page().strip().stopButton().click();
    wait();
    EXPECT_EQ(view.page().trace().table().rows(), 3200U);
    EXPECT_FALSE(view.page().strip().stopButton().isVisible());
}

// Roles, units and the part are the builder's; each change is one step, and is kept by the craft.
TEST_F(RecordingsTest, WhatItIsReadAsAndWhichPartCanBeChanged)
{
    openCraft();
    view.addFiles({file(QStringLiteral("a.csv"), pluckTable())});
    wait();
    auto* const role = named<QComboBox>(QStringLiteral("What column up holds"));
    auto* const unit = named<QComboBox>(QStringLiteral("Unit of column up"));
    ASSERT_TRUE(role && unit);
    EXPECT_EQ(role->currentText(), QStringLiteral("Acceleration"));
    EXPECT_EQ(unit->currentText(), QStringLiteral("m/s²"));
    const double most = view.page().trace().table().columns.at(1).values.at(150);
    unit->setCurrentText(QStringLiteral("g"));
    ASSERT_EQ(document.setup().recordings[0].columns.size(), 1U);
    EXPECT_EQ(document.setup().recordings[0].columns[0],
              (ReadColumn{"up", ColumnRole::Acceleration, "g", {}}));
    wait();
    EXPECT_NEAR(view.page().trace().table().columns.at(1).values.at(150), 9.80665 * most, 1e-9);
    role->setCurrentText(QStringLiteral("Not used"));
    wait();
    EXPECT_EQ(view.page().trace().table().columns.at(1).heading, QStringLiteral("left"));
    document.undoStack().undo();
    document.undoStack().undo();
    wait();
    EXPECT_TRUE(document.setup().recordings[0].columns.empty());
    EXPECT_EQ(unit->currentText(), QStringLiteral("m/s²"));

    auto* const from = named<NumberBox>(QStringLiteral("Beginning of the part"));
    ASSERT_TRUE(from);
    from->setValue(2.0);
    EXPECT_EQ(document.setup().recordings[0].from_s, 2.0);
    EXPECT_EQ(document.setup().recordings[0].to_s, std::nullopt);
    wait();
    QWidget* const canvas = view.page().trace().canvas();
    const auto x = [&](double time) {
        return static_cast<int>(view.page().trace().transform(QwtAxis::XBottom, time));
    };
    const int middle = canvas->height() / 2;
    QTest::mousePress(canvas, Qt::LeftButton, {}, {x(3.0), middle});
    for (double time = 3.2; time < 6.05; time += 0.4)
        QTest::mouseMove(canvas, {x(time), middle});
    QTest::mouseMove(canvas, {x(6.0), middle});
    QTest::mouseRelease(canvas, Qt::LeftButton, {}, {x(6.0), middle});
    const double second = 2.0 * 8.0 / canvas->width();  // two pixels
    EXPECT_NEAR(document.setup().recordings[0].from_s.value_or(0.0), 3.0, second);
    EXPECT_NEAR(document.setup().recordings[0].to_s.value_or(0.0), 6.0, second);
    wait();
    QTest::mouseDClick(canvas, Qt::LeftButton, {}, {x(4.0), middle});
    EXPECT_EQ(document.setup().recordings[0].from_s, std::nullopt);
    EXPECT_EQ(document.setup().recordings[0].to_s, std::nullopt);
}

// Oracle: G = m g/(A (λ − λ⁻²)), E = 3 G of a neo-Hookean tube by hand: 8 mm outside, 5 mm bore,
// 500 g on 150 mm that become 165 mm.
TEST_F(RecordingsTest, TheHangTestNeedsNoRecordingAndIsAcceptedInOneStep)
{
    openCraft();
    const stillbay::Setup before = document.setup();
    view.list().choose({Chosen::What::HangTest, 0});
    EXPECT_TRUE(view.hang().isVisible());
    named<NumberBox>(QStringLiteral("Mass 1 of the hang test"))->setValue(500.0);
    named<NumberBox>(QStringLiteral("Length without mass 1"))->setValue(150.0);
    named<NumberBox>(QStringLiteral("Length with mass 1"))->setValue(165.0);
    auto* const accept = &view.correction().acceptButton();
    ASSERT_TRUE(accept->isVisible()) << qPrintable(view.correction().text());
    auto* const values = named<QTableWidget>(QStringLiteral("Correction of the measurement"));
    ASSERT_EQ(values->rowCount(), 1);
    accept->click();
    EXPECT_EQ(document.undoStack().count(), 1);
    const TubeKind& tube = document.setup().tube;
    const double area = std::numbers::pi / 4.0 *
                        (std::pow(tube.outer_diameter_mm, 2) - std::pow(tube.bore_mm, 2)) * 1e-6;
    const double stretch = 1.1;
    const double modulus =
        3.0 * 0.5 * 9.80665 / (area * (stretch - 1.0 / (stretch * stretch))) * 1e-6;
    ASSERT_TRUE(tube.youngs_modulus_mpa);
    EXPECT_NEAR(*tube.youngs_modulus_mpa, modulus, 1e-6 * modulus);
    const Source* const source = sourceOf(document.setup(), "tube.youngs_modulus_mpa");
    ASSERT_TRUE(source);
    EXPECT_EQ(source->from, Origin::Measured);
    EXPECT_EQ(source->date, QDate::currentDate().toString(Qt::ISODate).toStdString());
    EXPECT_FALSE(accept->isEnabled());  // the craft has it
    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
    EXPECT_TRUE(accept->isEnabled());
}

// Oracle: samples/recordings/README.md, which says how fast the rotors of the sample sound
// turn: 51.41, 79.29 and 107.19 a second at 30, 45 and 60 % of the stick, where the duty
// is 23.5, 37.5 and 53 % of a craft whose KV is 850. The craft has 880, so the same speeds want
// 850/880 of that duty; the pack and the resistance take part of it, hence two per cent of room.
TEST_F(RecordingsTest, TheThrottlesOfASoundCorrectTheMotors)
{
    openCraft();
    view.addFiles({QStringLiteral(STILLBAY_SAMPLES_DIR "/recordings/motor-sound.flac")});
    wait();
    EXPECT_FALSE(view.correction().acceptButton().isVisible());
    for (int k = 1; k <= 3; ++k) {
        auto* const stick = named<NumberBox>(QStringLiteral("Throttle at steady speed %1").arg(k));
        ASSERT_TRUE(stick && stick->isVisible()) << qPrintable(view.correction().text());
        stick->setValue(15.0 + 15.0 * k);
    }
    ASSERT_TRUE(view.correction().acceptButton().isVisible())
        << qPrintable(view.correction().text());
    view.correction().acceptButton().click();
    const ThrottleCurve& curve = document.setup().drive.throttle_curve;
    ASSERT_EQ(curve.size(), 3U) << qPrintable(view.correction().text());
    const double duties[] = {0.235, 0.375, 0.53};
    for (std::size_t k = 0; k < 3; ++k)
        EXPECT_NEAR(curve[k][1], duties[k] * 850.0 / 880.0, 0.02);
    EXPECT_EQ(document.undoStack().count(), 2);
}

// Oracle: samples/recordings/README.md and its generator: the sweep's craft turns at what KV 850
// and a bent stick give, each rotor's unbalance is 6.5 g·mm, where the file has 880 and 4. Of the
// unbalance, which arms and tubes of the file make of it, twice the spread that is shown.
TEST_F(RecordingsTest, ASweepCorrectsSpeedAndUnbalanceEachInOneStep)
{
    openCraft();
    const QString path = QStringLiteral(STILLBAY_SAMPLES_DIR "/recordings/sweep-airframe.csv");
    view.addFiles({path}, describeSample);
    wait();
    const auto chartNamed = [&](const QString& name) {
        auto* const which = named<QComboBox>(QStringLiteral("What is shown of it"));
        which->setCurrentText(name);
        emit which->activated(which->currentIndex());
        EXPECT_EQ(view.page().result().chart().measured().name, name);
        return view.page().result().chart().measured();
    };
    for (const char* order : {"Order 1 over the throttle", "Order B over the throttle"}) {
        const MeasuredShown shown = chartNamed(QString::fromUtf8(order));
        ASSERT_EQ(shown.curves.size(), 6U);  // three axes, each with its prediction
        for (std::size_t k = 0; k < shown.curves.size(); k += 2) {
            EXPECT_FALSE(shown.curves[k].isPredicted);
            EXPECT_TRUE(shown.curves[k + 1].isPredicted);
            EXPECT_EQ(shown.curves[k].hue, shown.curves[k + 1].hue);
        }
    }
    const MeasuredShown spectrogram = chartNamed(QStringLiteral("Spectrogram"));
    ASSERT_TRUE(spectrogram.picture);
    EXPECT_EQ(spectrogram.curves.size(), 3U);
    EXPECT_TRUE(spectrogram.curves[0].isPredicted);
    EXPECT_FALSE(spectrogram.across.title.isEmpty() || spectrogram.up.title.isEmpty() ||
                 spectrogram.picture->title.isEmpty());
    EXPECT_TRUE(view.page().result().chart().axisWidget(QwtAxis::YRight)->isVisible());
    EXPECT_GT(view.page().result().chart().table().rows(), 50U);
    chartNamed(QStringLiteral("Spectrum"));
    EXPECT_FALSE(view.page().result().chart().axisWidget(QwtAxis::YRight)->isVisible());

    CorrectionPane &speeds = view.said().speeds(), &unbalance = view.said().unbalance();
    ASSERT_TRUE(speeds.acceptButton().isVisible() && speeds.acceptButton().isEnabled())
        << qPrintable(speeds.text());
    ASSERT_TRUE(unbalance.acceptButton().isVisible() && unbalance.acceptButton().isEnabled())
        << qPrintable(unbalance.text());
    const int before = document.undoStack().count();
    unbalance.acceptButton().click();
    EXPECT_EQ(document.undoStack().count(), before + 1);
    const Source* const source = sourceOf(document.setup(), "drive.unbalance_g_mm");
    ASSERT_TRUE(source && source->spread);
    EXPECT_EQ(source->from, Origin::Measured);
    EXPECT_NEAR(document.setup().drive.unbalance_g_mm, 6.5,
                2 * *source->spread * document.setup().drive.unbalance_g_mm);
    wait();
    EXPECT_FALSE(unbalance.acceptButton().isEnabled());  // the craft has it
    speeds.acceptButton().click();
    EXPECT_EQ(document.undoStack().count(), before + 2);
}

// A log too slow for what shakes in it says so, and where the order is written instead. Oracle: the
// sampling theorem; the craft's order 2B at the end of its cruise lies above 100 Hz.
TEST_F(RecordingsTest, OrdersAboveHalfTheRateAreWarnedOf)
{
    openCraft();
    const QString path = file(QStringLiteral("sweep.csv"), pluckTable(800));  // 400 a second
    view.addFiles({path});
    wait();
    ASSERT_EQ(document.setup().recordings[0].kind, RecordingKind::Sweep);
    EXPECT_TRUE(view.correction().text().contains(QStringLiteral("above half the sample rate")))
        << qPrintable(view.correction().text());
}

// Which arm was tapped is one step, and asked of a tap alone.
TEST_F(RecordingsTest, TheTappedArmIsTheBuilders)
{
    openCraft();
    view.addFiles({file(QStringLiteral("arm-tap.csv"), pluckTable(800))});
    wait();
    view.page().reading().setOpen(true);
    auto* const arm = named<QComboBox>(QStringLiteral("Tapped arm"));
    ASSERT_TRUE(arm && arm->isVisible());
    EXPECT_EQ(arm->count(), static_cast<int>(document.setup().airframe.arms.size()));
    arm->setFocus();
    QTest::keyClick(arm, Qt::Key_Down);
    QTest::keyClick(arm, Qt::Key_Down);
    EXPECT_EQ(document.setup().recordings[0].arm, 3.0);
    QTest::keyClick(arm, Qt::Key_Home);
    EXPECT_EQ(document.setup().recordings[0].arm, std::nullopt);  // the first is meant anyway

    view.list().kind().setCurrentIndex(0);
    emit view.list().kind().activated(0);
    ASSERT_EQ(document.setup().recordings[0].kind, RecordingKind::Pluck);
    EXPECT_FALSE(arm->isVisible());
    view.page().reading().setOpen(false);
}

// What was seen in films is one step a note, and stands over the computed wobble.
TEST_F(RecordingsTest, FlightNotesAreShownOverTheWobble)
{
    openCraft();
    view.list().choose({Chosen::What::FlightNotes, 0});
    named<NumberBox>(QStringLiteral("Throttle from which it was seen"))->setValue(42.0);
    named<NumberBox>(QStringLiteral("Throttle up to which it was seen"))->setValue(47.0);
    named<QComboBox>(QStringLiteral("How the film looked"))->setCurrentIndex(2);
    for (QPushButton* button : view.findChildren<QPushButton*>())
        if (button->text() == QStringLiteral("Add this note"))
            button->click();
    ASSERT_EQ(document.setup().flight.notes.size(), 1U);
    EXPECT_EQ(document.setup().flight.notes[0], (FlightNote{0.42, 0.47, Seen::Bad, {}, {}}));
    EXPECT_EQ(view.flightNotes().table().rowCount(), 1);
    wait();
    EXPECT_TRUE(window.tuning().acrossThrottle().accessibleDescription().contains(
        QStringLiteral("In a film from 42 to 47 %: seen bad.")));
    document.undoStack().undo();
    EXPECT_EQ(view.flightNotes().table().rowCount(), 0);
}

TEST_F(RecordingsTest, RecordingsAreDroppedAnywhereOnceACraftIsOpen)
{
    const QString path = file(QStringLiteral("a.csv"), pluckTable(800));
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(path)});
    const auto drop = [&](QWidget& widget) {
        QDragEnterEvent enter({5, 5}, Qt::CopyAction, &data, Qt::LeftButton, {});
        QCoreApplication::sendEvent(&widget, &enter);
        QDropEvent event(QPointF(5, 5), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
        QCoreApplication::sendEvent(&widget, &event);
        return event.isAccepted();
    };
    drop(window);
    EXPECT_TRUE(document.setup().recordings.empty());
    craft = copyOf("reedbed", QStringLiteral("craft.stillbay"));
    ASSERT_TRUE(window.openFile(craft));
    settle();
    EXPECT_FALSE(view.isVisible());
    drop(window.tuning());
    EXPECT_TRUE(view.isVisible());
    ASSERT_EQ(document.setup().recordings.size(), 1U);
    wait();
    EXPECT_TRUE(view.messages().isHidden());
}

TEST_F(RecordingsTest, TheListIsWorkedByTheKeyboard)
{
    openCraft();
    view.addFiles({file(QStringLiteral("a.csv"), pluckTable(800)),
                   file(QStringLiteral("motor-sound.csv"), pluckTable(800))});
    wait();
    EXPECT_EQ(document.setup().recordings[1].kind, RecordingKind::Sound);  // by its name
    QListWidget& list = view.list().list();
    list.setFocus();
    QTest::keyClick(&list, Qt::Key_Home);
    EXPECT_EQ(view.list().chosen(), (Chosen{Chosen::What::Recording, 0}));
    QTest::keyClick(&list, Qt::Key_Delete);
    ASSERT_EQ(document.setup().recordings.size(), 1U);
    EXPECT_EQ(view.list().chosen(), (Chosen{Chosen::What::Recording, 0}));
    QTest::keyClick(&list, Qt::Key_End);
    EXPECT_EQ(view.list().chosen().what, Chosen::What::FlightNotes);
    QTest::keyClick(&list, Qt::Key_Up);
    EXPECT_EQ(view.list().chosen().what, Chosen::What::HangTest);
    QTest::keyClick(&list, Qt::Key_Up);
    QComboBox& kind = view.list().kind();
    kind.setFocus();
    QTest::keyClick(&kind, Qt::Key_Home);
    EXPECT_EQ(document.setup().recordings[0].kind, RecordingKind::Pluck);
    wait();
    EXPECT_TRUE(QFile::exists(folder.filePath(QStringLiteral("a.csv"))));  // it stays
}

// Runs the window until something holds; the longest time [ms] between two turns of its loop.
qint64 longestGapUntil(const std::function<bool()>& holds)
{
    QEventLoop loop;
    QTimer beat;
    QElapsedTimer gap;
    qint64 longest_ms = 0;
    QObject::connect(&beat, &QTimer::timeout, &loop, [&] {
        longest_ms = std::max(longest_ms, gap.restart());
        if (holds())
            loop.quit();
    });
    gap.start();
    beat.start(1);
    loop.exec();
    return longest_ms;
}

// With STILLBAY_LONG_LOG=FILE: how long that log takes to be read alone and to be opened in the
// window, the window's longest pause meanwhile, and how soon a stop ends the reading.
TEST_F(RecordingsTest, ALongLogIsOpenedBesideALivingWindow)
{
    const QString path = qEnvironmentVariable("STILLBAY_LONG_LOG");
    if (path.isEmpty())
        GTEST_SKIP() << "STILLBAY_LONG_LOG names no log";
    openCraft();
    view.addFiles({path});  // once, so that it is in the kernel's memory
    const auto isOpened = [&] {
        return !view.page().strip().stopButton().isVisible();
    };
    int days = 0;
    const auto afresh = [&] {  // another version of the file
        document.undoStack().undo();
        wait();
        QFile log(path);
        EXPECT_TRUE(log.open(QIODevice::ReadWrite));
        EXPECT_TRUE(log.setFileTime(QDateTime::currentDateTime().addDays(-++days),
                                    QFileDevice::FileModificationTime));
    };
    longestGapUntil(isOpened);
    for (int turn = 0; turn < 3; ++turn) {
        afresh();
        QElapsedTimer since;
        since.start();
        EXPECT_TRUE(readRecording(path.toStdString()));
        const qint64 alone_ms = since.restart();
        view.addFiles({path});
        const qint64 gap_ms = longestGapUntil(isOpened);
        const qint64 opened_ms = since.elapsed();
        const qint64 later_ms = longestGapUntil([&] { return !view.isBusy(); });
        std::printf(
            "read alone %lld ms, opened %lld ms, longest pause %lld ms, while it is worked "
            "out %lld ms, all told %lld ms\n",
            alone_ms, opened_ms, gap_ms, later_ms, since.elapsed());
    }
    qint64 worst_ms = 0;
    for (const int after_ms : {20, 100, 200, 400, 600, 800, 1000, 1200, 1400}) {
        afresh();
        longestGapUntil([] { return jobThreads().activeThreadCount() == 0; });
        QElapsedTimer since;
        since.start();
        view.addFiles({path});
        longestGapUntil([&] { return since.elapsed() >= after_ms || isOpened(); });
        if (isOpened())
            break;
        view.page().strip().stopButton().click();
        since.restart();
        while (jobThreads().activeThreadCount() > 0)
            QCoreApplication::processEvents();
        worst_ms = std::max(worst_ms, since.elapsed());
        std::printf("stopped after %d ms: ended in %lld ms\n", after_ms, since.elapsed());
    }
    std::printf("the longest stop: %lld ms\n", worst_ms);
}

// At the smallest size everything has room, also with the columns open: then these stand where the
// lower chart was.
TEST_F(RecordingsTest, NothingIsCutInASmallWindow)
{
    openCraft();
    view.addFiles({file(QStringLiteral("a.csv"), pluckTable(800))});
    wait();
    for (const QSize size : {QSize(1920, 1080), QSize(1280, 800), QSize(1024, 700)})
        for (const bool isOpen : {false, true}) {
            view.page().reading().setOpen(isOpen);
            window.resize(size);
            for (int turn = 0; turn < 6; ++turn)  // a layout in a layout waits for the outer one
                QCoreApplication::processEvents();
            EXPECT_EQ(window.size(), size) << size.width() << (isOpen ? " open" : " closed");
            EXPECT_TRUE(view.page().trace().isVisible());
            EXPECT_EQ(view.page().result().isVisible(), !isOpen || size.height() > 1000)
                << size.width() << (isOpen ? " open" : " closed");
            for (const QLabel* label : view.findChildren<QLabel*>()) {
                if (!label->isVisible() || label->text().isEmpty())
                    continue;
                const int least = label->wordWrap() ? label->heightForWidth(label->width())
                                                    : label->minimumSizeHint().height();
                EXPECT_GE(label->height(), least) << qPrintable(label->text());
            }
            for (const QPushButton* button : view.findChildren<QPushButton*>()) {
                if (button->isVisible()) {
                    EXPECT_GE(button->width(), button->minimumSizeHint().width())
                        << qPrintable(button->text());
                }
            }
        }
    view.page().reading().setOpen(false);
}

}  // namespace
}  // namespace stillbay::ui
