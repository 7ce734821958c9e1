// SPDX-License-Identifier: MIT
#include "app/commands/film_text.h"

#include "app/commands/calibrate_json.h"
#include "app/commands/json_numbers.h"
#include "app/commands/paragraph.h"
#include "core/base/format.h"
#include "core/base/units.h"

#include <sstream>

namespace stillbay {
namespace {

// "1", "B", "2B": the number of the turn's orders, or how many times the blades pass.
std::string nameOfOrder(int order, int blades)
{
    if (order == 1)
        return "1";
    if (order % blades != 0)
        return std::to_string(order);
    return order == blades ? "B" : std::to_string(order / blades) + "B";
}

std::optional<std::string> orderOfLine(const FilmText& film, std::size_t line)
{
    if (!film.match || !film.match->lines[line].order)
        return {};
    return nameOfOrder(*film.match->lines[line].order, film.blades);
}

Json lineJson(const FilmText& film, std::size_t place)
{
    const FilmLine& line = film.clip.reading.lines[place];
    const auto order = orderOfLine(film, place);
    return Json{{"frequency_hz", number(line.frequency_hz)},
                {"uncertainty_hz", number(line.uncertainty_hz)},
                {"wobble_px", number(line.wobble_px)},
                {"frame_shake_px", number(line.frameShake_px)},
                {"across_px", number(line.across_px)},
                {"up_px", number(line.up_px)},
                {"roll_mrad", number(line.roll_rad * 1e3)},
                {"aliases_hz", numbers(line.aliases_hz)},
                {"order", order ? Json(*order) : Json(nullptr)}};
}

std::string joined(const std::vector<double>& values)
{
    std::string text;
    for (const double value : values)
        text += (text.empty() ? "" : ", ") + formatted("%.1f", value);
    return text;
}

std::string blindText(const std::vector<BlindBand>& bands)
{
    std::string text;
    for (const BlindBand& band : bands)
        text += (text.empty() ? "" : ", ") + formatted("%.1f to %.1f", band.from_hz, band.to_hz);
    return text;
}

void linesTable(std::ostream& page, const FilmText& film)
{
    page << "\n  frequency              wobble    across        up       roll   order\n";
    for (std::size_t k = 0; k < film.clip.reading.lines.size(); ++k) {
        const FilmLine& line = film.clip.reading.lines[k];
        page << formatted("  %7.2f Hz +/- %5.2f  %6.2f px %6.2f px %6.2f px %5.2f mrad   ",
                          line.frequency_hz, line.uncertainty_hz, line.wobble_px, line.across_px,
                          line.up_px, line.roll_rad * 1e3)
             << orderOfLine(film, k).value_or("-") << '\n';
        if (!line.aliases_hz.empty())
            page << "      or, as far as the rows can tell, " << joined(line.aliases_hz) << " Hz\n";
    }
}

void craftText(std::ostream& page, const FilmText& film)
{
    page << '\n';
    if (film.match)
        paragraph(page,
                  std::string(qualityWord(film.match->mark.quality)) + ": " +
                      english(film.match->mark.reason),
                  "");
    for (const Phrase& text : film.texts)
        paragraph(page, english(text), "");
    if (film.match && film.filmedPx != 1.0)
        paragraph(
            page,
            formatted("These sentences count pixels of the craft's camera, %.3g of the film's.",
                      film.filmedPx),
            "");
}

}  // namespace

std::string filmJson(const FilmText& film)
{
    const FilmReading& reading = film.clip.reading;
    Json json{{"format", "stillbay-film"},
              {"version", 1},
              {"frames", film.clip.frames},
              {"frame_rate_hz", number(film.clip.facts.frameRate_hz)},
              {"width_px", film.clip.facts.width},
              {"height_px", film.clip.facts.height},
              {"readout_ms", number(film.options.readout_s / unit::ms)},
              {"exposure_ms", number(film.options.exposure_s / unit::ms)},
              {"used_s", number(reading.used_s)},
              {"wobble_px", number(reading.wobble_px)},
              {"floor_px", number(reading.floor_px)},
              {"frame_shake_px", number(reading.frameShake_px)}};
    Json lines = Json::array();
    for (std::size_t k = 0; k < reading.lines.size(); ++k)
        lines.push_back(lineJson(film, k));
    json["lines"] = std::move(lines);
    json["blind_hz"] = array(reading.blind_hz, [](const BlindBand& band) {
        return Json::array({number(band.from_hz), number(band.to_hz)});
    });
    const auto& match = film.match;
    const bool isTold = match && match->mark.quality != Quality::Poor;
    json["speed_rpm"] = isTold ? number(match->speed / unit::rpm) : Json(nullptr);
    json["throttle"] = isTold ? number(match->throttle_full) : Json(nullptr);
    json["quality"] = match ? Json(qualityWord(match->mark.quality)) : Json(nullptr);
    json["reason"] = match ? Json(english(match->mark.reason)) : Json(nullptr);
    json["explained"] = match ? number(match->explained) : Json(nullptr);
    json["predicted_px"] =
        match && match->predicted_px ? number(*match->predicted_px * film.filmedPx) : Json(nullptr);
    json["unusable"] = array(film.clip.shifts.unusable, [](const UnusableStretch& stretch) {
        return Json{{"from_s", number(stretch.from_s)},
                    {"to_s", number(stretch.to_s)},
                    {"reason", english(stretch.reason)}};
    });
    json["warnings"] = array(film.clip.warnings, [](const Warning& warning) {
        return Json{{"code", warning.code}, {"text", english(warning.text)}};
    });
    return json.dump(1) + '\n';
}

std::string filmPage(const FilmText& film)
{
    const FilmReading& reading = film.clip.reading;
    std::ostringstream page;
    page << formatted("Film of %u x %u pixels, %.2f frames a second\n", film.clip.facts.width,
                      film.clip.facts.height, film.clip.facts.frameRate_hz)
         << formatted("  %.1f s of it used, readout %.2f ms, exposure %.2f ms\n\n", reading.used_s,
                      film.options.readout_s / unit::ms, film.options.exposure_s / unit::ms)
         << formatted("wobble       %.2f px rms\n", reading.wobble_px)
         << formatted("frame shake  %.2f px rms\n", reading.frameShake_px)
         << formatted("floor        %.2f px: a line below it is not told from noise\n",
                      reading.floor_px);
    if (reading.lines.empty())
        page << "\nNo line stands above the noise.\n";
    else
        linesTable(page, film);
    if (!film.texts.empty())
        craftText(page, film);
    if (!reading.blind_hz.empty()) {
        page << '\n';
        paragraph(page,
                  "Blind, so that nothing is said there: " + blindText(reading.blind_hz) + " Hz.",
                  "");
    }
    return page.str();
}

}  // namespace stillbay
