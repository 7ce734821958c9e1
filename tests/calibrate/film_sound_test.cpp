// SPDX-License-Identifier: MIT
#include "core/calibrate/film_sound.h"

#include "core/setup/text.h"
#include "tests/clip/sound_files.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <functional>
#include <iterator>
#include <numbers>
#include <random>

namespace stillbay {
namespace {

Setup reedbedOfFilm()
{
    std::ifstream in(STILLBAY_SAMPLES_DIR "/reedbed.stillbay");
    const std::string text((std::istreambuf_iterator<char>(in)), {});
    return readSetup(text).value().setup;
}

SoundTrack trackOf(double seconds, const std::function<double(double)>& sound)
{
    SoundTrack track{8000, {}};
    for (int k = 0; k < static_cast<int>(8000 * seconds); ++k)
        track.samples.push_back(sound(k / 8000.0));
    return track;
}

// Oracle: the speed that the sound was made of. Its tolerance is half a per cent at least.
TEST(FilmSound, TellsTheSpeedOfTheRotors)
{
    const auto setup = reedbedOfFilm();
    for (const double speed : {52.3, 74.1, 111.0}) {
        const auto heard =
            rotorsOnFilm(setup, trackOf(2, [&](double t) { return soundOfRotors(speed, 2, t); }));
        ASSERT_TRUE(heard) << speed << english(heard.error().what);
        EXPECT_NEAR(heard->speed, speed, 0.004 * speed);
        EXPECT_GE(heard->tolerance, 0.005 * speed * 0.99);
        EXPECT_LT(heard->tolerance, 0.02 * speed);
    }
}

// Oracle: a speed that climbs by a third is no one speed; noise has none; a word of speech is half
// a second of sound that no rotor makes.
TEST(FilmSound, IsNoSpeedWhereItChangesOrThereIsNone)
{
    const auto setup = reedbedOfFilm();
    const auto climbing = rotorsOnFilm(
        setup, trackOf(4, [](double t) {
            const double turns = 2 * std::numbers::pi * (60 * t + 2.5 * t * t);  // 60 to 80 rev/s
            return 0.1 * std::sin(2 * turns) + 0.05 * std::sin(4 * turns) +
                   0.03 * std::sin(6 * turns);
        }));
    ASSERT_FALSE(climbing);
    EXPECT_EQ(climbing.error().code, Errc::NoAnswer);
    EXPECT_NE(english(climbing.error().what).find("name a part"), std::string::npos);
    // A twentieth of the way from either end, 61 and 79 rev/s, the first and last window aside.
    int low_rpm = 0, high_rpm = 0;
    ASSERT_EQ(std::sscanf(english(climbing.error().what).c_str(),
                          "the rotors are heard to turn at %d to %d rpm", &low_rpm, &high_rpm),
              2)
        << english(climbing.error().what);
    EXPECT_NEAR(low_rpm, 61 * 60, 90);
    EXPECT_NEAR(high_rpm, 79 * 60, 90);

    std::mt19937 random(3);
    std::uniform_real_distribution<double> even(-0.1, 0.1);
    EXPECT_FALSE(rotorsOnFilm(setup, trackOf(2, [&](double) { return even(random); })));
    EXPECT_FALSE(rotorsOnFilm(setup, trackOf(2, [](double) { return 0.0; })));
    EXPECT_FALSE(rotorsOnFilm(
        setup, trackOf(4, [](double t) { return t < 1 ? soundOfRotors(74.1, 2, t) : 0.0; })));
    EXPECT_FALSE(rotorsOnFilm(setup, {}));
}

}  // namespace
}  // namespace stillbay
