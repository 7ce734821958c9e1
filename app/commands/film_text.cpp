// SPDX-License-Identifier: MIT
#include "app/commands/film_text.h"

#include "app/commands/calibrate_json.h"
#include "app/commands/json_numbers.h"
#include "app/commands/paragraph.h"
#include "core/base/format.h"
#include "core/base/units.h"

#include <cmath>
#include <optional>
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

const FilmMatch* matchOf(const FilmText& text)
{
    const auto& beside = text.film.beside;
    return beside && beside->film.match ? &*beside->film.match : nullptr;
}

// The film's own; null: it does not tell.
const ReadoutEstimate* readoutOf(const FilmText& text)
{
    const auto& beside = text.film.beside;
    return beside && beside->readout ? &beside->readout->estimate : nullptr;
}

// Of a match that may be relied on.
std::optional<std::string> orderOfLine(const FilmText& text, std::size_t line)
{
    const FilmMatch* const match = matchOf(text);
    if (!match || match->mark.quality == Quality::Poor || !match->lines[line].order)
        return {};
    return nameOfOrder(*match->lines[line].order, text.blades);
}

// "B?" where the speed that makes it one is left open.
std::string orderColumn(const FilmText& text, std::size_t line)
{
    const auto order = orderOfLine(text, line);
    if (!order)
        return "-";
    return isSpeedSettled(*matchOf(text)) ? *order : *order + '?';
}

// Where the speed wanders by more than the line's frequency is uncertain by.
std::optional<double> wanderOf(const FilmLine& line)
{
    return line.wander_hz > line.uncertainty_hz ? std::optional(line.wander_hz) : std::nullopt;
}

// Two decimals, or what is left of three digits below a tenth.
std::string pixels(double px)
{
    return px < 0.1 ? formatted("%.3g", px) : formatted("%.2f", px);
}

Json lineJson(const FilmText& text, std::size_t place)
{
    const FilmLine& line = text.film.clip.reading.lines[place];
    const auto order = orderOfLine(text, place);
    return Json{{"frequency_hz", number(line.frequency_hz)},
                {"uncertainty_hz", number(line.uncertainty_hz)},
                {"wander_hz", number(wanderOf(line))},
                {"wobble_px", number(line.wobble_px)},
                {"wobble_uncertainty_px", number(line.wobbleUncertainty_px)},
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

// Where it was looked through to; none: there is no end.
std::optional<double> highestOf(const FilmReading& reading)
{
    return std::isfinite(reading.highest_hz) ? std::optional(reading.highest_hz) : std::nullopt;
}

std::string soughtText(const FilmReading& reading)
{
    const auto highest_hz = highestOf(reading);
    return highest_hz
               ? formatted("Looked through from %.3g to %.4g Hz.", reading.lowest_hz, *highest_hz)
               : formatted("Looked through from %.3g Hz on.", reading.lowest_hz);
}

void linesTable(std::ostream& page, const FilmText& text)
{
    page << "\n  frequency              wobble    across        up       roll   order\n";
    for (std::size_t k = 0; k < text.film.clip.reading.lines.size(); ++k) {
        const FilmLine& line = text.film.clip.reading.lines[k];
        page << formatted("  %7.2f Hz +/- %5.2f  %6.3f px %6.3f px %6.3f px %5.2f mrad   ",
                          line.frequency_hz, line.uncertainty_hz, line.wobble_px, line.across_px,
                          line.up_px, line.roll_rad * 1e3)
             << orderColumn(text, k) << '\n';
        if (const auto wander_hz = wanderOf(line))
            page << formatted("      wanders by +/- %.2f Hz\n", *wander_hz);
        if (!line.aliases_hz.empty())
            page << "      or, as far as the rows can tell, " << joined(line.aliases_hz) << " Hz\n";
    }
}

void craftText(std::ostream& page, const FilmText& text)
{
    const CraftFilm& craft = text.film.beside->film;
    page << '\n';
    if (craft.match)
        paragraph(page,
                  std::string(qualityWord(craft.match->mark.quality)) + ": " +
                      english(craft.match->mark.reason),
                  "");
    for (const Phrase& sentence : craft.texts)
        paragraph(page, english(sentence), "");
    if (craft.filmedPx != 1.0)
        paragraph(
            page,
            formatted("These sentences count pixels of the craft's camera, %.3g of the film's.",
                      craft.filmedPx),
            "");
}

}  // namespace

std::string filmJson(const FilmText& text)
{
    const FilmReading& reading = text.film.clip.reading;
    const ReadoutEstimate* const own = readoutOf(text);
    Json json{
        {"format", "stillbay-film"},
        {"version", 1},
        {"frames", text.film.clip.frames},
        {"frame_rate_hz", number(text.film.clip.facts.frameRate_hz)},
        {"width_px", text.film.clip.facts.width},
        {"height_px", text.film.clip.facts.height},
        {"readout_ms", number(text.options.readout_s / unit::ms)},
        {"readout_estimate_ms",
         number(own ? std::optional(own->readout_s / unit::ms) : std::nullopt)},
        {"readout_spread_ms", number(own ? std::optional(own->spread_s / unit::ms) : std::nullopt)},
        {"exposure_ms", number(text.options.exposure_s / unit::ms)},
        {"used_s", number(reading.used_s)},
        {"wobble_px", number(reading.wobble_px)},
        {"floor_px", number(reading.floor_px)},
        {"frame_shake_px", number(reading.frameShake_px)}};
    Json lines = Json::array();
    for (std::size_t k = 0; k < reading.lines.size(); ++k)
        lines.push_back(lineJson(text, k));
    json["lines"] = std::move(lines);
    json["sought_hz"] = Json::array({number(reading.lowest_hz), number(highestOf(reading))});
    json["blind_hz"] = array(reading.blind_hz, [](const BlindBand& band) {
        return Json::array({number(band.from_hz), number(band.to_hz)});
    });
    const FilmMatch* const match = matchOf(text);
    const bool isTold = match && match->mark.quality != Quality::Poor;
    const auto rpm = [](std::optional<double> speed) {
        return speed ? number(*speed / unit::rpm) : Json(nullptr);
    };
    json["heard_rpm"] = text.film.heard ? rpm(text.film.heard->speed) : Json(nullptr);
    json["speed_rpm"] = isTold ? rpm(match->speed) : Json(nullptr);
    json["other_speed_rpm"] = isTold ? rpm(match->otherSpeed) : Json(nullptr);
    json["speed_settled"] = match ? Json(isSpeedSettled(*match)) : Json(nullptr);
    json["throttle"] = isTold ? number(match->throttle_full) : Json(nullptr);
    json["quality"] = match ? Json(qualityWord(match->mark.quality)) : Json(nullptr);
    json["reason"] = match ? Json(english(match->mark.reason)) : Json(nullptr);
    json["explained"] = isTold ? number(match->explained) : Json(nullptr);
    json["predicted_px"] = isTold && match->predicted_px
                               ? number(*match->predicted_px * text.film.beside->film.filmedPx)
                               : Json(nullptr);
    json["unusable"] = array(text.film.clip.shifts.unusable, [](const UnusableStretch& stretch) {
        return Json{{"from_s", number(stretch.from_s)},
                    {"to_s", number(stretch.to_s)},
                    {"reason", english(stretch.reason)}};
    });
    json["warnings"] = warningsJson(warningsOf(text.film));
    return textOf(json);
}

std::string filmPage(const FilmText& text)
{
    const FilmReading& reading = text.film.clip.reading;
    std::ostringstream page;
    page << formatted("Film of %u x %u pixels, %.2f frames a second\n", text.film.clip.facts.width,
                      text.film.clip.facts.height, text.film.clip.facts.frameRate_hz)
         << formatted("  %.1f s of it used, readout %.2f ms, exposure %.2f ms\n", reading.used_s,
                      text.options.readout_s / unit::ms, text.options.exposure_s / unit::ms);
    if (text.film.heard)
        page << formatted("  rotors heard at %.0f rpm +/- %.0f\n",
                          text.film.heard->speed / unit::rpm,
                          text.film.heard->tolerance / unit::rpm);
    if (const ReadoutEstimate* const own = readoutOf(text))
        page << formatted("  readout by the film itself %.2f ms +/- %.2g\n",
                          own->readout_s / unit::ms, own->spread_s / unit::ms);
    page << formatted("\nwobble       %.2f px rms\n", reading.wobble_px)
         << formatted("frame shake  %.2f px rms\n", reading.frameShake_px) << "floor        "
         << pixels(reading.floor_px)
         << " px: no line is claimed whose wobble and frame shake both lie below it\n";
    if (reading.lines.empty())
        page << "\nNo line stands above the noise.\n";
    else
        linesTable(page, text);
    if (text.film.beside)
        craftText(page, text);
    page << '\n';
    paragraph(page,
              soughtText(reading) + (reading.blind_hz.empty()
                                         ? ""
                                         : " Blind, so that nothing is said there: " +
                                               blindText(reading.blind_hz) + " Hz."),
              "");
    return page.str();
}

}  // namespace stillbay
