// SPDX-License-Identifier: MIT
#include "ui/recordings/film_finding.h"

#include "tests/ui/samples.h"
#include "ui/recordings/last_answers.h"

#include <QDir>

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <utility>
#include <vector>

namespace stillbay::ui {
namespace {

// Oracle: the questions that were asked last, by hand.
TEST(LastAnswers, KeepWhatWasAskedLastAndNothingThatWasStopped)
{
    LastAnswers<int, int> kept(2);
    std::vector<int> worked;
    const auto square = [&](int x, const std::stop_token& stop = {}) {
        return kept.of(x, stop, [&] {
            worked.push_back(x);
            return x * x;
        });
    };
    EXPECT_EQ(square(3), 9);
    EXPECT_EQ(square(4), 16);
    EXPECT_EQ(square(3), 9);
    EXPECT_EQ(square(5), 25);  // instead of 4
    EXPECT_EQ(square(3), 9);
    EXPECT_EQ(worked, (std::vector{3, 4, 5}));
    EXPECT_EQ(square(4), 16);
    EXPECT_EQ(worked, (std::vector{3, 4, 5, 4}));

    std::stop_source stop;
    stop.request_stop();
    square(6, stop.get_token());
    square(6);
    EXPECT_EQ(worked, (std::vector{3, 4, 5, 4, 6, 6}));
}

// The sample films beside a craft whose camera is said to read a fifth faster than theirs did, so
// that they are read with their own readout, too.
struct FilmFindingTest : testing::Test {
    FilmQuestion question;
    std::size_t steps = 0;  // that were told

    static SharedFilm read(const NamedRecording& named)
    {
        const auto answer = readFilmFile(named, {{},
                                                 [](std::size_t, std::size_t) {},
                                                 [](const FilmAnswer&) {
                                                 }});
        return answer ? answer->film : nullptr;
    }

    void SetUp() override
    {
        question.setup = sampleSetup("reedbed");
        question.setup.camera.readout_ms = 18.5;
        question.setup.camera.width_px = 640;  // else it is another mode of the camera's
        question.setup.camera.height_px = 360;
        const QDir folder(QStringLiteral(STILLBAY_SAMPLES_DIR "/recordings"));
        for (const QString& name : folder.entryList({QStringLiteral("*.mp4")}, QDir::Files)) {
            NamedRecording named;
            named.file = folder.filePath(name).toStdString();
            named.kind = RecordingKind::Film;
            question.films.push_back({named, read(named)});
            ASSERT_TRUE(question.films.back().film) << qPrintable(name);
        }
        ASSERT_GE(question.films.size(), kFilmsOfSample);
    }

    // All that is said.
    QString said()
    {
        const auto found = filmFinding(question, {}, [this](std::size_t, std::size_t) { ++steps; });
        EXPECT_TRUE(found);
        if (!found)
            return {};
        QString text = found->finding.sentence + found->finding.notes.join(u'\n');
        for (const auto& offer : {found->finding.readout, found->finding.unbalance})
            if (offer)
                text += QString::number(offer->correction.values.front().after, 'g', 17);
        return text;
    }

    static constexpr std::size_t kFilmsOfSample = 3;
};

// Oracle: what the same films say that were read anew.
TEST_F(FilmFindingTest, AChangeOfTheCraftIsOnlyJudgedAnew)
{
    QString before = said();
    EXPECT_TRUE(before.contains(QStringLiteral("the film's own is"))) << qPrintable(before);
    EXPECT_GT(steps, 0U);
    steps = 0;
    for (const auto& change : std::vector<void (*)(stillbay::Setup&)>{
             [](stillbay::Setup& setup) { setup.drive.unbalance_g_mm *= 1.3; },
             [](stillbay::Setup& setup) { setup.mounts.free_length_mm *= 1.1; },
             [](stillbay::Setup& setup) {
                 setup.drive.motor.kv_rpm_per_v *= 1.02;
             }}) {
        change(question.setup);
        QString now = said();
        EXPECT_NE(now, before);
        before = std::move(now);
    }
    EXPECT_EQ(steps, 0U);
    for (NamedFilm& film : question.films)
        film.film = read(film.named);
    EXPECT_EQ(said(), before);
    EXPECT_GT(steps, 0U);
    question.setup.camera.readout_ms = 17.0;  // asks for other lines
    steps = 0;
    said();
    EXPECT_GT(steps, 0U);
}

// Oracle: Progress's own contract, and the films by hand: of three, the first is kept.
TEST_F(FilmFindingTest, StepsAreThoseOfAllFilms)
{
    question.films.resize(kFilmsOfSample);
    question.chosen = 1;
    FilmQuestion alone = question;
    alone.films = {question.films[1]};
    alone.chosen = 0;
    ASSERT_TRUE(filmFinding(alone, {}));
    std::vector<std::size_t> told;
    ASSERT_TRUE(filmFinding(question, {}, [&](std::size_t done, std::size_t total) {
        EXPECT_EQ(total, kFilmsOfSample * kStepsAFilm);
        told.push_back(done);
    }));
    ASSERT_FALSE(told.empty());
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_GE(told.front(), kStepsAFilm);
    EXPECT_LE(told.back(), kFilmsOfSample * kStepsAFilm);
    for (std::size_t film = 1; film < kFilmsOfSample; ++film)
        EXPECT_TRUE(std::any_of(told.begin(), told.end(), [&](std::size_t step) {
            return step > film * kStepsAFilm && step < (film + 1) * kStepsAFilm;
        })) << film;
}

// Films as samples/recordings/README.md has them, with the craft's own readout.
struct ThrottledFilmsTest : FilmFindingTest {
    void SetUp() override
    {
        FilmFindingTest::SetUp();
        question.setup.camera.readout_ms = 16.0;
        question.films.resize(kFilmsOfSample);
        for (std::size_t film = 0; film < kFilmsOfSample; ++film)
            question.films[film].named.throttle = std::array{0.27, 0.30, 0.32}[film];
    }

    QString unbalance()
    {
        const auto found = filmFinding(question, {});
        notes = found ? found->finding.notes.join(u'\n') : QString();
        if (!found || !found->finding.unbalance)
            return {};
        const CorrectedValue& value = found->finding.unbalance->correction.values.front();
        return QStringLiteral("%1 %2").arg(value.after, 0, 'g', 17).arg(value.spread, 0, 'g', 17);
    }

    // The same part of the same file, read anew; without its rows it says nothing.
    NamedFilm again(std::size_t place, bool keepsRows) const
    {
        NamedFilm film = question.films[place];
        ClipShifts clip = film.film->clip();
        if (!keepsRows)
            clip.shifts = {};
        film.film = std::make_shared<const ReadFilm>(std::move(clip), std::nullopt,
                                                     std::vector<FilmStill>());
        return film;
    }

    QString notes;
};

// Oracle: what the films say without the one that leaves its speed open, silent and without a
// throttle; whichever is looked at.
TEST_F(ThrottledFilmsTest, WhatIsLeftOutKeepsNoneFromCounting)
{
    const QString three = unbalance();
    ASSERT_FALSE(three.isEmpty()) << qPrintable(notes);
    NamedFilm open = again(0, true);
    open.named.throttle.reset();
    question.films.insert(question.films.begin(), open);
    for (const std::size_t chosen : {0U, 1U, 2U}) {
        question.chosen = chosen;
        EXPECT_EQ(unbalance(), three) << qPrintable(notes);
        EXPECT_TRUE(notes.contains(QStringLiteral("is left out: "))) << qPrintable(notes);
        EXPECT_FALSE(notes.contains(QStringLiteral("named before"))) << qPrintable(notes);
    }
}

// Of films that were not read with another readout than their own.
TEST_F(ThrottledFilmsTest, StepsEndNearTheLast)
{
    std::size_t last = 0;
    ASSERT_TRUE(filmFinding(question, {}, [&](std::size_t done, std::size_t) { last = done; }));
    EXPECT_GE(last, (kFilmsOfSample - 1) * kStepsAFilm + 9 * kStepsAFilm / 10);
    EXPECT_LT(last, kFilmsOfSample * kStepsAFilm);
}

TEST_F(ThrottledFilmsTest, WhatRepeatsAFilmIsLeftOutThoughItSaysNothing)
{
    question.films[2] = again(1, false);
    EXPECT_TRUE(unbalance().isEmpty());
    EXPECT_TRUE(notes.contains(QStringLiteral("named before"))) << qPrintable(notes);
    EXPECT_FALSE(notes.contains(QStringLiteral("says nothing"))) << qPrintable(notes);
    EXPECT_TRUE(notes.contains(QStringLiteral("Films at three throttles or more give")))
        << qPrintable(notes);
    question.films.erase(question.films.begin() + 1);
    question.films.push_back(question.films[0]);
    unbalance();
    EXPECT_TRUE(notes.contains(QStringLiteral("says nothing"))) << qPrintable(notes);
}

}  // namespace
}  // namespace stillbay::ui
