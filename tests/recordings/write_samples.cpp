// SPDX-License-Identifier: MIT
#include "tests/recordings/samples.h"
#include "tests/recordings/true_reedbed.h"
#include "tests/recordings/write_sound.h"

#include <fstream>
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
    write(motorSound(craft), folder / "motor-sound.flac", SoundForm::Flac);
}

}  // namespace stillbay::test
