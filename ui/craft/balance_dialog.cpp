// SPDX-License-Identifier: MIT
#include "ui/craft/balance_dialog.h"

#include "core/base/units.h"
#include "core/setup/sources.h"
#include "ui/widgets/number_box.h"
#include "ui/widgets/plain_number.h"

#include <QComboBox>
#include <QLocale>

#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kUsualTape_g = 0.02;
constexpr double kHeaviestTape_g = 100.0;
constexpr double kUsualPlace = 0.7;  // of the propeller's radius: where a blade is still broad

double tipRadius_mm(const Propeller& propeller)
{
    return propeller.diameter_in * unit::inch / unit::mm / 2.0;
}

QString threeDigits(double value)
{
    return plainNumber(value, 3);
}

}  // namespace

BalanceDialog::BalanceDialog(Document& document, QWidget* parent)
    : HelperDialog(document, tr("Balance with tape"),
                   tr("A strip of tape on a blade changes the unbalance by its mass times its "
                      "distance from the axis."),
                   parent),
      m_mass(addNumber({tr("Mass of the tape"), tr("g"),
                        tr("Weigh a long strip of the tape and take the share you stick on."), 0.0,
                        kHeaviestTape_g, 0.01})),
      m_radius(addNumber({tr("Distance from the axis"), tr("mm"),
                          tr("From the motor's axis to the middle of the tape, at most to the "
                             "propeller's tip."),
                          0.0, std::floor(tipRadius_mm(setup().drive.propeller)), 1.0})),
      m_side(new QComboBox(this))
{
    m_side->addItem(tr("On the light side: takes from the unbalance"));
    m_side->addItem(tr("On the heavy side: adds to the unbalance"));
    m_side->addItem(tr("It balances the propeller: shows what the unbalance was"));
    m_side->setAccessibleName(tr("Where the tape sticks"));
    m_side->setToolTip(
        tr("<p>On a balancing stand the heavy blade sinks; the light side is opposite.</p>"));
    addRow(tr("Where the tape sticks"), m_side);
    addNote(
        tr("Balance with the craft switched off, the battery unplugged and the propeller on a "
           "stand. Press the tape down all round and look at it before each flight: tape that "
           "flies off is worse than none. Replace propellers that are nicked, cracked or bent "
           "instead of balancing them."));
    m_mass->show(kUsualTape_g);
    m_radius->show(std::round(kUsualPlace * tipRadius_mm(setup().drive.propeller)));
    for (NumberBox* box : {m_mass, m_radius})
        connect(box, &NumberBox::valueChanged, this, &BalanceDialog::recompute);
    connect(m_side, &QComboBox::currentIndexChanged, this, &BalanceDialog::recompute);
    recompute();
}

void BalanceDialog::setHoverSpeed(std::optional<double> speed_rpm)
{
    m_hoverSpeed_rpm = speed_rpm;
    recompute();
}

TapeSide BalanceDialog::side() const
{
    constexpr TapeSide kSides[] = {TapeSide::Light, TapeSide::Heavy, TapeSide::Balances};
    return kSides[m_side->currentIndex()];
}

// To a thousandth of a g·mm: finer than any stand tells.
double BalanceDialog::unbalance_g_mm() const
{
    const double unbalance =
        unbalanceWithTape(setup().drive.unbalance_g_mm * unit::g_mm, m_mass->value() * unit::g,
                          m_radius->value() * unit::mm, side());
    return std::round(1e3 * unbalance / unit::g_mm) / 1e3;
}

QString BalanceDialog::gradeLine(double now_g_mm, double then_g_mm) const
{
    if (!m_hoverSpeed_rpm)
        return tr("No balance grade: the speed at hover is not known.");
    const auto grade = [this](double unbalance_g_mm) {
        return threeDigits(balanceGrade_mm_s(unbalance_g_mm * unit::g_mm,
                                             rotorMass(setup().drive.motor.mass_g * unit::g,
                                                       setup().drive.propeller.mass_g * unit::g),
                                             *m_hoverSpeed_rpm * unit::rpm));
    };
    return tr("Balance grade at hover (ISO 21940-11): G %1 now, G %2 then.")
        .arg(grade(now_g_mm), grade(then_g_mm));
}

void BalanceDialog::recompute()
{
    const double now_g_mm = setup().drive.unbalance_g_mm;
    const double then_g_mm = unbalance_g_mm();
    const double tape_g_mm = m_mass->value() * m_radius->value();
    setOutcome({tr("The tape is worth %1 g·mm.").arg(threeDigits(tape_g_mm)),
                tr("Unbalance: %1 g·mm now, %2 g·mm then.")
                    .arg(threeDigits(now_g_mm), threeDigits(then_g_mm)),
                gradeLine(now_g_mm, then_g_mm)});
    setProblem(side() == TapeSide::Light && tape_g_mm > now_g_mm
                   ? tr("That is more tape than it takes: the other side is the heavy one then.")
                   : QString());
}

Result<void> BalanceDialog::apply()
{
    return document().edit(tr("balance with tape"), {}, [this](Setup& setup) {
        setup.drive.unbalance_g_mm = unbalance_g_mm();
        dropSource(setup, "drive.unbalance_g_mm");
    });
}

}  // namespace stillbay::ui
