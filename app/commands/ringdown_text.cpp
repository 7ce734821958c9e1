// SPDX-License-Identifier: MIT
#include "app/commands/ringdown_text.h"

#include "app/commands/calibrate_json.h"
#include "app/commands/json_numbers.h"
#include "app/commands/paragraph.h"
#include "app/commands/recordings.h"
#include "core/base/format.h"
#include "core/base/printable.h"
#include "core/base/units.h"

#include <cmath>
#include <sstream>

namespace stillbay {
namespace {

Json rowJson(const SofteningRow& row)
{
    return {{"amplitude", number(row.amplitude)},
            {"frequency_hz", number(row.frequency_hz)},
            {"loss_factor", number(row.lossFactor)},
            {"frequency_spread", number(row.frequencySpread)},
            {"loss_spread", number(row.lossSpread)}};
}

Json modeJson(const DecayingMode& mode)
{
    return {{"frequency_hz", number(mode.frequency_hz)},
            {"loss_factor", number(mode.lossFactor)},
            {"share", number(mode.share)},
            {"frequency_spread", number(mode.frequencySpread)},
            {"loss_spread", number(mode.lossSpread)},
            {"shape", array(mode.shape,
                            [](const std::complex<double>& moved) {
                                return Json::array({number(moved.real()), number(moved.imag())});
                            })},
            {"amplitudes", numbers(mode.amplitudes)},
            {"softens", number(mode.softens)},
            {"softening", array(mode.softening, rowJson)}};
}

double timeOf(const Recording& recording, std::size_t sample)
{
    return recording.start + static_cast<double>(sample) / recording.rate;
}

std::size_t largestOf(const DecayingMode& mode)
{
    std::size_t largest = 0;
    for (std::size_t c = 0; c < mode.shape.size(); ++c)
        if (std::abs(mode.shape[c]) > std::abs(mode.shape[largest]))
            largest = c;
    return largest;
}

}  // namespace

std::string ringDownJson(const Recording& recording, const RingDown& answer)
{
    const Json json{
        {"format", "stillbay-ringdown"},
        {"version", 1},
        {"columns",
         array(answer.channels, [&](std::size_t c) { return recording.channels[c].name; })},
        {"modes", array(answer.modes, modeJson)},
        {"overtones", array(answer.overtones,
                            [](const Overtone& overtone) {
                                return Json{{"frequency_hz", number(overtone.frequency_hz)},
                                            {"of_hz", Json::array({number(overtone.first_hz),
                                                                   number(overtone.second_hz)})}};
                            })},
        {"plucks", array(answer.plucks,
                         [&](const Stretch& stretch) {
                             return Json{{"from_s", number(timeOf(recording, stretch.from))},
                                         {"to_s", number(timeOf(recording, stretch.to))}};
                         })},
        {"signal_to_noise_db", number(answer.signalToNoise_db)},
        {"residual", number(answer.residual)},
        {"quality", std::string(qualityWord(answer.mark.quality))},
        {"reason", english(answer.mark.reason)}};
    return textOf(json);
}

std::string ringDownPage(const Recording& recording, const RingDown& answer)
{
    std::ostringstream page;
    page << "   frequency          loss factor        share  moves most\n";
    for (const DecayingMode& mode : answer.modes) {
        const std::size_t c = answer.channels[largestOf(mode)];
        page << formatted("%9.3f Hz +/- %.2g %%   %.4f +/- %.2g %%   %5.1f %%  %s\n",
                          mode.frequency_hz, kPercent * mode.frequencySpread, mode.lossFactor,
                          kPercent * mode.lossSpread, kPercent * mode.share,
                          printable(recording.channels[c].name).c_str());
    }
    for (const DecayingMode& mode : answer.modes) {
        if (mode.softening.empty())
            continue;
        const Quantity quantity = recording.channels[answer.channels[largestOf(mode)]].quantity;
        page << formatted("\nas the mode at %.3f Hz dies:\n", mode.frequency_hz);
        for (const SofteningRow& row : mode.softening)
            page << formatted("  at %-14s %9.3f Hz +/- %.2g %%   %.4f +/- %.2g %%\n",
                              withUnit(row.amplitude, quantity).c_str(), row.frequency_hz,
                              kPercent * row.frequencySpread, row.lossFactor,
                              kPercent * row.lossSpread);
    }
    if (!answer.overtones.empty())
        page << '\n';
    for (const Overtone& overtone : answer.overtones)
        page << formatted("no mode, but made by those at %.3f Hz and %.3f Hz: %.3f Hz\n",
                          overtone.first_hz, overtone.second_hz, overtone.frequency_hz);
    page << "\nplucks:";
    for (std::size_t k = 0; k < answer.plucks.size(); ++k)
        page << formatted("%s %.3f s to %.3f s", k == 0 ? "" : ",",
                          timeOf(recording, answer.plucks[k].from),
                          timeOf(recording, answer.plucks[k].to));
    page << '\n';
    paragraph(page,
              std::string(qualityWord(answer.mark.quality)) + ": " + english(answer.mark.reason),
              "");
    return page.str();
}

}  // namespace stillbay
