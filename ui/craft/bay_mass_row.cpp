// SPDX-License-Identifier: MIT
#include "ui/craft/bay_mass_row.h"

#include "core/setup/bay_mass.h"
#include "core/setup/fields.h"
#include "core/setup/sources.h"
#include "core/setup/wording.h"
#include "ui/widgets/field_row.h"

#include <QObject>

namespace stillbay::ui {
namespace {

constexpr double kLightest_g = 0.1;
constexpr double kHeaviest_g = 100000.0;

void scaleParts(Setup& setup, double mass_g)
{
    setBayMass(setup.bay, mass_g);
    for (std::size_t k = 0; k < setup.bay.parts.size(); ++k)
        dropSource(setup, joinPath("bay.parts", k) + ".mass_g");
}

}  // namespace

FieldRow* bayMassRow(Document& document)
{
    FieldSpec spec;
    spec.path = QStringLiteral("bay.parts");
    spec.label = QObject::tr("Mass of all parts");
    spec.spoken = QObject::tr("Bay: mass of all parts");
    spec.unit = QObject::tr("g");
    spec.meaning = QObject::tr(
        "What the bay weighs with everything in it. Put it on the scale whole and type what it "
        "says: the masses of its parts are scaled together, one step to undo.");
    spec.min = kLightest_g;
    spec.max = kHeaviest_g;
    spec.count = [](const Setup&) {
        return std::size_t{1};
    };
    spec.entry = [](std::size_t) {
        return NumberAccess{[](const Setup& setup) { return std::optional(bayMass_g(setup.bay)); },
                            [](Setup& setup, std::optional<double> mass_g) {
                                scaleParts(setup, *mass_g);
                            }};
    };
    return new FieldRow(document, spec);
}

}  // namespace stillbay::ui
