// SPDX-License-Identifier: MIT
#include "app/commands/level_page.h"

#include "app/commands/paragraph.h"
#include "core/base/format.h"
#include "core/base/printable.h"
#include "core/base/units.h"
#include "core/setup/mount_layout.h"

#include <cmath>
#include <sstream>

namespace stillbay {
namespace {

std::string motionLine(const Vector3d& shift, const Vector3d& rotation)
{
    // Adding 0 keeps a rounded −0 out.
    const double up_mm = std::round(shift.z() / unit::mm * 100) / 100 + 0.0;
    return formatted("%.2f mm off (%+.2f upwards), turned %.2f°", shift.norm() / unit::mm, up_mm,
                     rotation.norm() / unit::deg);
}

void hangingTable(std::ostream& page, const Mounts& mounts)
{
    page << (mounts.drilled() ? "  tube   free length\n"
                              : "  tube   elevation   stretch   free length\n");
    for (std::size_t i = 0; i < mounts.points.size(); ++i) {
        const MountPoint& point = mounts.points[i];
        page << formatted("  %4zu", i + 1);
        if (!mounts.drilled())
            page << formatted("   %8.2f°   %+6.2f %%", point.elevation_deg,
                              kPercent * (point.stretch.value_or(*mounts.stretch) - 1));
        page << formatted("   %8.2f mm\n", freeLength_mm(mounts, point));
    }
}

}  // namespace

std::string_view levelFaultCode(LevelFault fault)
{
    switch (fault) {
        case LevelFault::TooHeavy:
            return "too-heavy";
        case LevelFault::OutsideTubes:
            return "outside-tubes";
        case LevelFault::Remains:
            break;
    }
    return "remains";
}

std::string levelPage(const LevelAnswer& answer)
{
    const Levelled& levelled = answer.levelled;
    std::ostringstream page;
    if (!answer.name.empty())
        page << printable(answer.name) << "\n\n";
    if (levelled.why) {
        paragraph(page, "Nothing makes the bay rest as drawn. " + english(levelled.why->text), "");
        page << "\nThe nearest\n";
    } else {
        page << "Hung like this the bay rests as drawn\n";
    }
    hangingTable(page, levelled.mounts);
    page << "\nAt rest\n";
    page << "  now     "
         << (answer.present ? motionLine(answer.present->shift, answer.present->theta)
                            : std::string("no stable rest"))
         << '\n';
    page << "  so      " << motionLine(levelled.shift, levelled.rotation) << '\n';
    return page.str();
}

}  // namespace stillbay
