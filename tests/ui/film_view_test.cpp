// SPDX-License-Identifier: MIT
#include "tests/clip/clip_files.h"
#include "tests/clip/film_generator.h"
#include "tests/ui/files_fixture.h"
#include "ui/charts/measured_chart.h"
#include "ui/charts/throttle_chart.h"
#include "ui/document/background.h"
#include "ui/recordings/correction_pane.h"
#include "ui/recordings/film_charts.h"
#include "ui/recordings/film_frame.h"
#include "ui/recordings/film_page.h"
#include "ui/recordings/reading_strip.h"
#include "ui/recordings/recording_list.h"
#include "ui/recordings/recordings_view.h"
#include "ui/recordings/result_part.h"
#include "ui/recordings/said_pane.h"
#include "ui/widgets/message_bar.h"
#include "ui/widgets/number_box.h"
#include "ui/window/tuning_view.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSlider>
#include <QTableWidget>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace stillbay::ui {
namespace {

// Two seconds of a drawn scene as the sample's camera would read it, at a twelfth of its width.
constexpr std::size_t kWidth = 320;
constexpr double kCameraWidth = 3840, kFilmedAmplitude_px = 0.5;

struct FilmViewTest : WindowAndFiles {
    RecordingsView& view = window.recordings();

    void SetUp() override
    {
        WindowAndFiles::SetUp();
        ASSERT_TRUE(window.openFile(copyOf("reedbed", QStringLiteral("craft.stillbay"))));
        settle();
        showPage(view);
    }

    // A vibration across, of one frequency.
    QString film(const QString& name, double frequency_hz, std::size_t width = kWidth,
                 std::size_t frames = 60) const
    {
        FilmRecipe recipe;
        recipe.width = width;
        recipe.height = 9 * width / 16;
        recipe.frames = frames;
        recipe.shakes = {{frequency_hz, {kFilmedAmplitude_px, 0.0, 0.0}, {}}};
        const QString path = folder.filePath(name);
        EXPECT_TRUE(encodeFilm(FilmGenerator(recipe), path.toStdString(), 18));
        return path;
    }

    void addSampleRecordings()
    {
        for (QPushButton* button : view.findChildren<QPushButton*>())
            if (button->text() == QStringLiteral("Add the sample recordings"))
                button->click();
    }

    void addSampleFilms()
    {
        addSampleRecordings();
        change([](stillbay::Setup& setup) {
            std::erase_if(setup.recordings,
                          [](const auto& named) { return named.kind != RecordingKind::Film; });
        });
    }

    void wait()
    {
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return !view.isBusy() && window.recompute().isCurrent(); }, kPatience_ms));
        QCoreApplication::processEvents();
    }

    static bool jobsEnd()
    {
        return QTest::qWaitFor([] { return jobThreads().activeThreadCount() == 0; }, kPatience_ms);
    }

    const MeasuredShown& shown(const QString& chart)
    {
        auto* const which = named<QComboBox>(QStringLiteral("What is shown of the film"));
        const int row = which->findText(chart);
        EXPECT_GE(row, 0) << qPrintable(chart);
        which->setCurrentIndex(row);
        emit which->activated(row);
        return view.film().result().chart().measured();
    }

    static const MeasuredCurve& curve(const MeasuredShown& shown, const QString& key)
    {
        const auto found = std::find_if(shown.curves.begin(), shown.curves.end(),
                                        [&](const MeasuredCurve& c) { return c.key == key; });
        EXPECT_NE(found, shown.curves.end()) << qPrintable(key);
        static const MeasuredCurve none;
        return found == shown.curves.end() ? none : *found;
    }
};

// Oracle: the motion that the film was drawn with; wobble of a rolling shutter, docs/theory.md
// (13): A/√2·√(1 − j₀² − 3j₁²) at f·t_r = 1.06, by hand 0.924.
TEST_F(FilmViewTest, AFilmIsNamedReadAndLaidOverThePrediction)
{
    const stillbay::Setup before = document.setup();
    view.addFiles({film(QStringLiteral("hover.mp4"), 66.0)});
    ASSERT_EQ(document.setup().recordings.size(), 1U);
    EXPECT_EQ(document.setup().recordings[0].kind, RecordingKind::Film);
    wait();
    EXPECT_TRUE(view.messages().isHidden()) << qPrintable(view.messages().text());
    EXPECT_EQ(view.list().list().item(0)->text(), QStringLiteral("hover.mp4\nFilm"));

    const MeasuredShown& lines = shown(QStringLiteral("Lines of the film"));
    const MeasuredCurve& filmed = curve(lines, QStringLiteral("filmed_px"));
    ASSERT_GE(filmed.x.size(), 1U);
    const auto strongest = std::max_element(filmed.y.begin(), filmed.y.end()) - filmed.y.begin();
    EXPECT_NEAR(filmed.x[static_cast<std::size_t>(strongest)], 66.0, 0.2);
    const double phase = std::numbers::pi * 66.0 * 0.016;
    const double j0 = std::sin(phase) / phase, j1 = (j0 - std::cos(phase)) / phase;
    const double expected_px = kCameraWidth / double(kWidth) * kFilmedAmplitude_px /
                               std::numbers::sqrt2 * std::sqrt(1.0 - j0 * j0 - 3.0 * j1 * j1);
    EXPECT_NEAR(filmed.y[static_cast<std::size_t>(strongest)] / expected_px, 1.0, 0.1);
    ASSERT_FALSE(lines.blind.empty());  // at the frame rate, among others
    EXPECT_TRUE(std::any_of(lines.blind.begin(), lines.blind.end(),
                            [](const auto& band) { return band.from < 30.0 && 30.0 < band.to; }));
    EXPECT_TRUE(
        view.correction().text().contains(QStringLiteral("The film wobbles at 66.0\u00A0Hz")))
        << qPrintable(view.correction().text());

    // The frame with its rows; more than one can be looked at.
    EXPECT_TRUE(view.film().frame().text().contains(QStringLiteral("bent by")));
    const QString first = view.film().frame().text();
    QSlider& frames = view.film().frames();
    ASSERT_TRUE(frames.isEnabled());
    frames.setValue(frames.value() == 0 ? 1 : 0);
    EXPECT_NE(view.film().frame().text(), first);

    document.undoStack().undo();
    EXPECT_EQ(document.setup(), before);
}

TEST_F(FilmViewTest, FilmsStandBesideThePredictionInBothCharts)
{
    view.addFiles({film(QStringLiteral("a.mp4"), 66.0), film(QStringLiteral("b.mp4"), 80.0)});
    wait();
    const int steps = document.undoStack().count();
    auto* const known = view.film().findChild<QCheckBox*>();
    auto* const throttle = named<NumberBox>(QStringLiteral("Throttle of the film"));
    known->click();
    throttle->setValue(37.0);
    EXPECT_LE(document.undoStack().count(), steps + 2);
    EXPECT_EQ(document.setup().recordings[1].throttle, 0.37);
    wait();
    const std::vector<FilmedMark>& marks = window.tuning().acrossThrottle().filmed();
    const auto mine = std::find_if(marks.begin(), marks.end(), [](const FilmedMark& mark) {
        return mark.name == QStringLiteral("b.mp4");
    });
    ASSERT_NE(mine, marks.end());
    EXPECT_EQ(mine->flown, 0.37);
    const MeasuredShown& wobble = shown(QStringLiteral("Wobble over the throttle"));
    const MeasuredCurve& here = curve(wobble, QStringLiteral("this_film_px"));
    ASSERT_EQ(here.x.size(), 1U);
    EXPECT_DOUBLE_EQ(here.x[0], 100.0 * mine->throttle);
    EXPECT_DOUBLE_EQ(here.y[0], mine->filmed_px);
    EXPECT_FALSE(curve(wobble, QStringLiteral("predicted_px")).x.empty());
    EXPECT_EQ(window.tuning().acrossThrottle().filmedCurve().dataSize(), marks.size());
    EXPECT_TRUE(window.tuning().acrossThrottle().accessibleDescription().contains(
        QStringLiteral("b.mp4: filmed")))
        << qPrintable(window.tuning().acrossThrottle().accessibleDescription());
    EXPECT_TRUE(view.said().unbalance().isHidden());  // two films tell none
}

// While the tab is not looked at, too.
TEST_F(FilmViewTest, MarksAreOfFilmsThatTheCraftHas)
{
    ThrottleChart& chart = window.tuning().acrossThrottle();
    view.addFiles({film(QStringLiteral("a.mp4"), 66.0)});
    change([](stillbay::Setup& setup) { setup.recordings[0].throttle = 0.3; });
    wait();
    ASSERT_EQ(chart.filmed().size(), 1U);
    showPage(window.tuning());
    const QString filmed = chart.filmedCurve().title().text();
    change([](stillbay::Setup& setup) { setup.camera.width_px = 1920; });
    EXPECT_NE(chart.filmedCurve().title().text(), filmed);  // it says that it is older
    document.undoStack().undo();
    EXPECT_EQ(chart.filmedCurve().title().text(), filmed);
    document.undoStack().undo();
    document.undoStack().undo();
    EXPECT_TRUE(chart.filmed().empty());
}

TEST_F(FilmViewTest, AnotherCraftGetsNoMarksOfTheOneBefore)
{
    view.addFiles({film(QStringLiteral("a.mp4"), 66.0)});
    ASSERT_TRUE(view.isBusy());
    showPage(window.tuning());
    document.undoStack().clear();  // without a question
    ASSERT_TRUE(window.openFile(copyOf("quarry", QStringLiteral("other.stillbay"))));
    EXPECT_FALSE(view.isBusy());
    EXPECT_TRUE(jobsEnd());
    settle();
    EXPECT_TRUE(window.tuning().acrossThrottle().filmed().empty());
}

// Each change is one step, kept by the craft, and shown as it is.
TEST_F(FilmViewTest, APartIsChosenKeptAndLeftAgain)
{
    view.addFiles({film(QStringLiteral("a.mp4"), 66.0)});
    wait();
    auto* const begin = named<NumberBox>(QStringLiteral("Beginning of the film's part"));
    auto* const end = named<NumberBox>(QStringLiteral("End of the film's part"));
    EXPECT_NEAR(end->value(), 2.0, 0.02);
    begin->setValue(0.5);
    wait();
    EXPECT_EQ(document.setup().recordings[0].from_s, 0.5);
    EXPECT_DOUBLE_EQ(begin->value(), 0.5);
    EXPECT_NEAR(end->value(), 2.0, 0.02);
    end->setValue(1.8);
    wait();
    EXPECT_EQ(document.setup().recordings[0].from_s, 0.5);
    EXPECT_EQ(document.setup().recordings[0].to_s, 1.8);
    EXPECT_DOUBLE_EQ(begin->value(), 0.5);

    // A part without frames is told, and the way back is open.
    change([](stillbay::Setup& setup) {
        setup.recordings[0].from_s = 100.0;
        setup.recordings[0].to_s = 101.0;
    });
    wait();
    EXPECT_FALSE(view.messages().isHidden());
    auto* const whole = named<QPushButton>(QStringLiteral("Use all of the film"));
    ASSERT_TRUE(whole->isEnabled());
    whole->click();
    wait();
    EXPECT_TRUE(view.messages().isHidden()) << qPrintable(view.messages().text());
    EXPECT_FALSE(document.setup().recordings[0].from_s);
    EXPECT_FALSE(view.film().frame().text().isEmpty());
}

TEST_F(FilmViewTest, ManyFilmsAreReadOnceEach)
{
    const QString first = film(QStringLiteral("0.mp4"), 66.0, 160, 36);
    QStringList paths{first};
    for (int k = 1; k < 14; ++k) {
        paths << folder.filePath(QStringLiteral("%1.mp4").arg(k));
        ASSERT_TRUE(QFile::copy(first, paths.back()));
    }
    view.addFiles(paths);
    wait();  // it ends
    EXPECT_FALSE(view.film().strip().stopButton().isVisible());
    EXPECT_FALSE(view.film().frame().text().isEmpty());
}

// Oracle: order 1 shows at its alias, the blade pass a little off where it is computed, twice that
// not at all: each name stands at its line, or else where the order is computed.
TEST(FilmCharts, OrdersAreNamedAtTheirLines)
{
    CraftFilm film;
    film.reading.floor_px = 0.01;
    for (const auto& [frequency_hz, wobble_px] : {std::pair(147.5, 0.5), {13.4, 0.3}}) {
        FilmLine line;
        line.frequency_hz = frequency_hz;
        line.wobble_px = wobble_px;
        film.reading.lines.push_back(line);
    }
    FilmMatch match;
    match.lines = {{.line = 0, .order = 2, .frequency_hz = 147.5, .resonance = {}},
                   {.line = 1, .order = 1, .frequency_hz = 73.4, .resonance = {}}};
    match.orders = {{.order = 1, .frequency_hz = 73.4, .filmed_px = 0.3, .predicted_px = 0.2},
                    {.order = 2, .frequency_hz = 146.8, .filmed_px = 0.5, .predicted_px = 0.4},
                    {.order = 4, .frequency_hz = 293.6, .filmed_px = {}, .predicted_px = 0.1}};
    match.mark = {Quality::Fair, phrase("a line counts only where one of its aliases is meant")};
    film.match = match;
    const auto at = [&film](std::size_t place) {
        return filmLinesShown(film, 2).predicted.at(place);
    };
    EXPECT_EQ(at(0).x, 13.4);
    EXPECT_TRUE(at(0).text.endsWith(QStringLiteral(", as 73.4 Hz"))) << qPrintable(at(0).text);
    EXPECT_EQ(at(1).x, 147.5);
    EXPECT_FALSE(at(1).text.contains(QStringLiteral(" as ")));
    EXPECT_EQ(at(2).x, 293.6);
    film.match->mark.quality = Quality::Poor;  // claims no order
    EXPECT_EQ(at(0).x, 73.4);
    EXPECT_EQ(at(1).x, 146.8);
}

// A flight filmed in one clip at several throttles: the file is named once for each.
TEST_F(FilmViewTest, OneFileIsNamedForEachOfItsParts)
{
    const QString path = film(QStringLiteral("flight.mp4"), 66.0, kWidth, 90);
    view.addFiles({path});
    change([](stillbay::Setup& setup) {
        setup.recordings[0].to_s = 1.4;
        setup.recordings[0].throttle = 0.3;
    });
    view.addFiles({path, path});
    ASSERT_EQ(document.setup().recordings.size(), 2U);
    EXPECT_EQ(view.list().chosen(), (Chosen{Chosen::What::Recording, 1}));
    wait();
    named<NumberBox>(QStringLiteral("Beginning of the film's part"))->setValue(1.5);
    EXPECT_EQ(document.setup().recordings[0].to_s, 1.4);
    EXPECT_EQ(document.setup().recordings[1].from_s, 1.5);
    change([](stillbay::Setup& setup) { setup.recordings[1].throttle = 0.45; });
    wait();
    EXPECT_EQ(view.list().chosen(), (Chosen{Chosen::What::Recording, 1}));
    EXPECT_EQ(view.list().list().item(0)->text(),
              QStringLiteral("flight.mp4\nFilm, 0 to 1.4 s, 30 %"));
    EXPECT_EQ(view.list().list().item(1)->text(),
              QStringLiteral("flight.mp4\nFilm, from 1.5 s, 45 %"));
    const std::vector<FilmedMark>& marks = window.tuning().acrossThrottle().filmed();
    ASSERT_EQ(marks.size(), 2U);
    EXPECT_EQ(marks[0].name, QStringLiteral("flight.mp4, from 1.5 s"));
    EXPECT_EQ(marks[1].name, QStringLiteral("flight.mp4, 0 to 1.4 s"));
    const MeasuredShown& wobble = shown(QStringLiteral("Wobble over the throttle"));
    EXPECT_EQ(curve(wobble, QStringLiteral("this_film_px")).x.size(), 1U);
    EXPECT_EQ(curve(wobble, QStringLiteral("other_films_px")).x.size(), 1U);

    emit view.list().removeWanted(0);
    ASSERT_EQ(document.setup().recordings.size(), 1U);
    EXPECT_EQ(view.list().chosen(), (Chosen{Chosen::What::Recording, 0}));
    wait();
    ASSERT_EQ(marks.size(), 1U);
    EXPECT_EQ(marks[0].flown, 0.45);
    document.undoStack().undo();
    EXPECT_EQ(view.list().chosen(), (Chosen{Chosen::What::Recording, 1}));
}

// Oracle: as below, beside a craft whose camera is said to read a fifth faster than the one that
// the films were drawn with. They tell it to some 3 % (a spread of 0.2 to 0.4 ms).
TEST_F(FilmViewTest, FilmsAreTakenWithTheirOwnReadoutWhichCanBeTheCrafts)
{
    const double readout_ms = document.setup().camera.readout_ms;
    change([&](stillbay::Setup& setup) {
        setup.camera.readout_ms = 18.5;
        setup.camera.width_px = 640;  // else it is another mode of the camera's
        setup.camera.height_px = 360;
    });
    addSampleFilms();
    const QString letter = folder.filePath(QStringLiteral("letter.mp4"));
    put(letter, "Dear builder,\nthis is no film at all.\n");
    view.addFiles({letter});
    view.list().choose({Chosen::What::Recording, 0});
    wait();
    const QString said = view.correction().text();
    EXPECT_TRUE(said.contains(QStringLiteral("letter.mp4 cannot be read"))) << qPrintable(said);
    EXPECT_TRUE(said.contains(QStringLiteral("the film's own is"))) << qPrintable(said);
    ASSERT_FALSE(view.said().unbalance().isHidden()) << qPrintable(said);
    ASSERT_FALSE(view.said().readout().isHidden()) << qPrintable(said);
    const int steps = document.undoStack().count();
    view.said().readout().acceptButton().click();
    EXPECT_EQ(document.undoStack().count(), steps + 1);
    EXPECT_NEAR(document.setup().camera.readout_ms, readout_ms, 0.05 * readout_ms);
    wait();
    EXPECT_TRUE(view.said().readout().isHidden());
    view.said().unbalance().acceptButton().click();
    EXPECT_NEAR(document.setup().drive.unbalance_g_mm, 6.5, 0.2 * 6.5);
}

// Oracle: samples/recordings/README.md, which says what the films were drawn with.
TEST_F(FilmViewTest, TheSampleFilmsOfferTheUnbalance)
{
    addSampleRecordings();
    const auto& recordings = document.setup().recordings;
    const auto film = std::find_if(recordings.begin(), recordings.end(), [](const auto& named) {
        return named.kind == RecordingKind::Film;
    });
    ASSERT_NE(film, recordings.end());
    EXPECT_EQ(film->throttle, 0.27);
    view.list().choose(
        {Chosen::What::Recording, static_cast<std::size_t>(film - recordings.begin())});
    wait();
    EXPECT_EQ(window.tuning().acrossThrottle().filmed().size(), 3U);
    EXPECT_TRUE(view.film().findChild<QCheckBox*>()->isChecked());
    EXPECT_FALSE(view.said().unbalance().isHidden());
    const double before = document.setup().drive.unbalance_g_mm;
    view.said().unbalance().acceptButton().click();
    EXPECT_NEAR(document.setup().drive.unbalance_g_mm, 6.5, 0.2 * 6.5);
    EXPECT_GT(std::abs(before - 6.5), 0.2 * 6.5);  // it was not so before
}

// At first where nothing is said yet, then above what was said of the craft as it was.
TEST_F(FilmViewTest, SaysHowManyFilmsAreWorkedOutWhereTheResultWillStand)
{
    view.addFiles({film(QStringLiteral("a.mp4"), 66.0)});
    view.addFiles({film(QStringLiteral("b.mp4"), 80.0)});
    wait();
    const QString before = view.correction().text();
    const auto isSaidIn = [](const QWidget& place) {
        const auto labels = place.findChildren<QLabel*>();
        return std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
            return label->isVisible() && label->text().contains(QStringLiteral("film 2 of 2"));
        });
    };
    EXPECT_FALSE(isSaidIn(view.said()));
    change([](stillbay::Setup& setup) { setup.camera.exposure_ms *= 1.5; });  // other lines
    EXPECT_TRUE(QTest::qWaitFor([&] { return isSaidIn(view.said()); }, kPatience_ms));
    EXPECT_TRUE(isSaidIn(view.film().strip()));
    EXPECT_TRUE(view.correction().isVisible());
    EXPECT_EQ(view.correction().text(), before);
    wait();
    EXPECT_FALSE(isSaidIn(view.said()));
    EXPECT_FALSE(isSaidIn(view.film().strip()));
}

// Oracle: what the films say without the one that repeats another, whichever is looked at.
TEST_F(FilmViewTest, AFilmThatIsNamedTwiceCountsOnce)
{
    addSampleFilms();
    view.list().choose({Chosen::What::Recording, 1});
    wait();
    const auto said = [this] {
        const auto* const numbers = view.said().unbalance().findChild<QTableWidget*>();
        return view.said().unbalance().text() + numbers->item(0, 2)->text();
    };
    ASSERT_FALSE(view.said().unbalance().isHidden());
    const QString once = said();

    const QString link = folder.filePath(QStringLiteral("link.mp4"));
    const QString first = QString::fromStdString(document.setup().recordings[0].file);
    ASSERT_TRUE(QFile::link(first, link));
    view.addFiles({link});
    change([](stillbay::Setup& setup) {
        setup.recordings[3].throttle = setup.recordings[0].throttle;
        setup.recordings[3].from_s = 0.0;
    });
    for (const std::size_t place : {0U, 3U}) {
        view.list().choose({Chosen::What::Recording, place});
        wait();
        EXPECT_EQ(said(), once) << place;
        const QString text = view.correction().text();
        EXPECT_TRUE(text.contains(
            QStringLiteral("link.mp4, from 0 s is left out: the same part of the same file was "
                           "named before, as %1.")
                .arg(QFileInfo(first).fileName())))
            << qPrintable(text);
    }
}

TEST_F(FilmViewTest, ReadingAFilmCanBeStoppedAndBegunAgain)
{
    view.addFiles({film(QStringLiteral("a.mp4"), 66.0)});
    EXPECT_TRUE(view.isBusy());
    EXPECT_TRUE(view.film().strip().stopButton().isVisible());
    view.film().strip().stopButton().click();
    EXPECT_FALSE(view.isBusy());
    EXPECT_TRUE(jobsEnd());
    EXPECT_FALSE(view.correction().text().contains(QStringLiteral("worked out")));
    EXPECT_EQ(view.film().strip().stopButton().text(), QStringLiteral("Read again"));
    view.film().strip().stopButton().click();
    wait();
    EXPECT_FALSE(view.film().strip().stopButton().isVisible());
    EXPECT_FALSE(view.film().frame().text().isEmpty());
}

TEST_F(FilmViewTest, WhatIsNoFilmOrMissingIsSaidAndNothingIsLost)
{
    const QString letter = folder.filePath(QStringLiteral("letter.mp4"));
    put(letter, "Dear builder,\nthis is no film at all.\n");
    const QString gone = film(QStringLiteral("gone.mp4"), 66.0);
    view.addFiles({letter, gone});
    wait();
    ASSERT_TRUE(QFile::remove(gone));
    view.list().choose({Chosen::What::Recording, 0});
    wait();
    EXPECT_TRUE(view.messages().text().contains(QStringLiteral("letter.mp4 cannot be read")))
        << qPrintable(view.messages().text());
    view.list().choose({Chosen::What::Recording, 1});
    wait();
    EXPECT_TRUE(view.messages().text().contains(QStringLiteral("gone.mp4 is missing")))
        << qPrintable(view.messages().text());
    EXPECT_TRUE(view.film().frame().text().isEmpty());
    EXPECT_EQ(document.setup().recordings.size(), 2U);

    // Mended, it is read when it is chosen again.
    ASSERT_TRUE(QFile::remove(letter));
    ASSERT_TRUE(QFile::rename(film(QStringLiteral("good.mp4"), 66.0), letter));
    view.list().choose({Chosen::What::Recording, 0});
    wait();
    EXPECT_TRUE(view.messages().isHidden()) << qPrintable(view.messages().text());
    EXPECT_FALSE(view.film().frame().text().isEmpty());
}

}  // namespace
}  // namespace stillbay::ui
