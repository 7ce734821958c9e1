// SPDX-License-Identifier: MIT
#include "tests/recordings/write_sound.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <sndfile.h>
#include <stdexcept>
#include <string>
#include <vector>

namespace stillbay::test {

void write(const SampleSound& sound, const std::filesystem::path& file, SoundForm form)
{
    SF_INFO info{};
    info.samplerate = sound.rate_hz;
    info.channels = 1;
    info.format = (form == SoundForm::Flac ? SF_FORMAT_FLAC : SF_FORMAT_WAV) | SF_FORMAT_PCM_16;
    SNDFILE* out = sf_open(file.c_str(), SFM_WRITE, &info);
    if (out == nullptr)
        throw std::runtime_error("cannot write " + file.string());
    sf_set_string(out, SF_STR_COMMENT, kInvented);
    std::vector<std::int16_t> samples;
    for (const double value : sound.values)
        samples.push_back(
            static_cast<std::int16_t>(std::lround(std::clamp(value, -1.0, 1.0) * 32767)));
    const auto written =
        sf_write_short(out, samples.data(), static_cast<sf_count_t>(samples.size()));
    sf_close(out);
    if (written != static_cast<sf_count_t>(samples.size()))
        throw std::runtime_error("cannot write " + file.string());
}

}  // namespace stillbay::test
