// SPDX-License-Identifier: MIT
#include "core/calibrate/named_reading.h"

#include <algorithm>
#include <array>
#include <span>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr std::array kRolesOfQuantities{std::pair{ColumnRole::Acceleration, Quantity::Acceleration},
                                        std::pair{ColumnRole::AngularRate, Quantity::AngularRate},
                                        std::pair{ColumnRole::Sound, Quantity::Sound},
                                        std::pair{ColumnRole::Throttle, Quantity::Throttle},
                                        std::pair{ColumnRole::RotorSpeed, Quantity::RotorSpeed},
                                        std::pair{ColumnRole::Other, Quantity::Other}};

const UnitChoice& unitAmong(std::span<const UnitChoice> units, std::string_view wanted)
{
    const auto found = std::find_if(units.begin(), units.end(), [&](const UnitChoice& choice) {
        return choice.unit == wanted;
    });
    return found == units.end() ? units.front() : *found;
}

}  // namespace

Quantity quantityOf(ColumnRole role)
{
    for (const auto& [one, quantity] : kRolesOfQuantities)
        if (one == role)
            return quantity;
    return Quantity::Other;
}

ColumnRole roleOf(const ReadPlan& plan, std::size_t column)
{
    if (plan.timeColumn == column)
        return ColumnRole::Time;
    if (!plan.columns[column].isUsed)
        return ColumnRole::Unused;
    for (const auto& [role, quantity] : kRolesOfQuantities)
        if (quantity == plan.columns[column].quantity)
            return role;
    return ColumnRole::Other;
}

std::string unitOf(const ReadPlan& plan, std::size_t column)
{
    return plan.timeColumn == column ? plan.timeUnit : plan.columns[column].unit;
}

void setRole(ReadPlan& plan, std::size_t column, ColumnRole role, const std::string& unit)
{
    ColumnPlan& changed = plan.columns[column];
    if (role == ColumnRole::Time) {
        if (plan.timeColumn && plan.timeColumn != column)
            plan.columns[*plan.timeColumn].isUsed = false;
        if (plan.timeColumn != column)
            plan.isTimeOfDay = false;
        const UnitChoice& choice = unitAmong(unitsOfTime(), unit);
        plan.timeColumn = column;
        plan.timeUnit = choice.unit;
        plan.timeScale = choice.scale;
        plan.isTimeUnitGuessed = false;
        return;
    }
    if (plan.timeColumn == column) {
        plan.timeColumn.reset();
        plan.timeUnit.clear();
    }
    changed.isUsed = role != ColumnRole::Unused;
    if (!changed.isUsed)
        return;
    const Quantity quantity = quantityOf(role);
    const std::string wanted = unit.empty() && changed.quantity == quantity ? changed.unit : unit;
    setUnit(changed, quantity, unitAmong(unitsOf(quantity), wanted).unit);
    changed.isUnitGuessed = false;
}

ReadPlan followed(ReadPlan guessed, const NamedRecording& recording)
{
    for (const ReadColumn& changed : recording.columns)
        for (std::size_t column = 0; column < guessed.columns.size(); ++column)
            if (guessed.columns[column].name == changed.name)
                setRole(guessed, column, changed.role, changed.unit);
    if (recording.rate_hz && guessed.kind == ReadPlan::Kind::Table && !guessed.timeColumn)
        guessed.rate_hz = recording.rate_hz;
    return guessed;
}

}  // namespace stillbay
