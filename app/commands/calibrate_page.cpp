// SPDX-License-Identifier: MIT
#include "app/commands/calibrate_page.h"

#include "app/commands/calibrate_json.h"
#include "app/commands/paragraph.h"
#include "core/base/format.h"
#include "core/base/printable.h"
#include "core/base/units.h"
#include "core/suspension/motion_text.h"

#include <sstream>

namespace stillbay {
namespace {

void valueRow(std::ostream& page, const CorrectedValue& value)
{
    const std::string before = value.before ? formatted("%.4g", *value.before) : std::string("-");
    page << formatted("  %-34s %9s -> %-9s %-4s", english(value.label).c_str(), before.c_str(),
                      formatted("%.4g", value.after).c_str(), value.unit.c_str());
    if (value.spread > 0)
        page << formatted(" +/- %.2g %%", kPercent * value.spread);
    page << '\n';
}

void modesTable(std::ostream& page, const PluckAnswer& pluck)
{
    page << "\nModes on the bench, with what recorded\n"
         << "     measured          before            after\n"
         << "        Hz   loss      Hz   loss      Hz   loss\n";
    for (const PluckedMode& mode : pluck.modes) {
        std::string measured = formatted("  %8s %6s", "-", "-");
        if (mode.measured)
            measured = formatted("  %8.2f %6.3f", pluck.measured[*mode.measured].frequency_hz,
                                 pluck.measured[*mode.measured].lossFactor);
        page << measured
             << formatted(" %7.2f %6.3f %7.2f %6.3f   %s\n", mode.before_hz, mode.beforeLoss,
                          mode.after_hz, mode.afterLoss, english(motionText(mode.motion)).c_str());
    }
}

}  // namespace

std::string calibratePage(const std::string& name, std::span<const Correction> corrections,
                          const PluckAnswer* pluck)
{
    std::ostringstream page;
    if (!name.empty())
        page << printable(name) << '\n';
    for (const Correction& correction : corrections) {
        page << '\n' << english(correction.measurement) << '\n';
        for (const CorrectedValue& value : correction.values)
            valueRow(page, value);
        if (correction.throttleCurve) {
            page << "  throttle curve:";
            for (const auto& [throttle, duty] : *correction.throttleCurve)
                page << formatted(" %.3g:%.3g", throttle, duty);
            page << formatted(" +/- %.2g %%\n", kPercent * correction.throttleCurveSpread);
        }
        page << formatted("  unexplained: %.2g %%", kPercent * correction.residual);
        if (correction.residualBefore)
            page << formatted(", before %.2g %%", kPercent * *correction.residualBefore);
        page << '\n';
        paragraph(page,
                  std::string(qualityWord(correction.mark.quality)) + ": " +
                      english(correction.mark.reason),
                  "  ");
        for (const Warning& warning : correction.warnings)
            paragraph(page, english(warning.text), "  ! ");
    }
    if (pluck)
        modesTable(page, *pluck);
    return page.str();
}

}  // namespace stillbay
