// SPDX-License-Identifier: MIT
#include "tests/recordings/samples.h"
#include "tests/recordings/true_reedbed.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <fstream>
#include <sndfile.h>
#include <stdexcept>

namespace stillbay::test {
namespace {

void write(const SampleTable& table, const std::filesystem::path& folder)
{
    std::ofstream out(folder / table.name, std::ios::binary);
    out << table.text;
    if (!out.flush())
        throw std::runtime_error("cannot write " + table.name);
}

void write(const SampleSound& sound, const std::filesystem::path& file)
{
    SF_INFO info{};
    info.samplerate = sound.rate_hz;
    info.channels = 1;
    info.format = SF_FORMAT_FLAC | SF_FORMAT_PCM_16;
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

}  // namespace

void writeSamples(const Setup& reedbed, const std::filesystem::path& folder)
{
    const Setup craft = trueReedbed(reedbed);
    write(sidewaysPluck(craft), folder);
    write(nodPluck(craft), folder);
    write(armTap(craft), folder);
    const SweepTables sweep = throttleSweep(craft);
    write(sweep.airframe, folder);
    write(sweep.bay, folder);
    write(motorSound(craft), folder / "motor-sound.flac");
}

}  // namespace stillbay::test
