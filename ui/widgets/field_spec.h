// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/fields.h"
#include "core/setup/setup.h"
#include "ui/widgets/display_text.h"

#include <QCoreApplication>
#include <QString>
#include <QStringList>

#include <cmath>
#include <cstddef>
#include <functional>
#include <optional>
#include <type_traits>
#include <variant>
#include <vector>

namespace stillbay::ui {

/// Where a struct of type Owner lives in a setup.
template <class Owner>
struct Place {
    QString path;    ///< as in the file: "drive.motor"
    QString spoken;  ///< what a screen reader says before the field's label: "Motor"
    std::function<const Owner*(const Setup&)> find;  ///< null: that row is gone
};

/// One number of a setup, whatever struct it lives in.
struct NumberAccess {
    std::function<std::optional<double>(const Setup&)> read;  ///< none: not given
    std::function<void(Setup&, std::optional<double>)> write;
};

/// What a row of the form needs to know of one field of the table, freed of the owner's type.
struct FieldSpec {
    QString path, spoken, label, unit, meaning;
    double min = 0.0, max = 0.0, step = 1.0;
    bool whole = false;
    bool optional = false;
    bool list = false;       ///< any number of entries
    QStringList entryNames;  ///< empty for a single number
    std::function<std::size_t(const Setup&)> count;
    std::function<NumberAccess(std::size_t)> entry;
    std::function<void(Setup&, std::size_t)> resize;  ///< lists only
};

namespace detail {

template <class Owner>
Owner* writable(const Place<Owner>& place, Setup& setup)
{
    return const_cast<Owner*>(place.find(setup));  // the setup is ours to write
}

template <class T>
inline constexpr bool isOptional =
    std::is_same_v<T, std::optional<double>> || std::is_same_v<T, std::optional<Triple>>;

template <class T>
std::optional<double> readEntry(const T& value, std::size_t index)
{
    if constexpr (std::is_arithmetic_v<T>)
        return static_cast<double>(value);
    else if constexpr (std::is_same_v<T, std::optional<double>>)
        return value;
    else if constexpr (std::is_same_v<T, std::optional<Triple>>)
        return value ? std::optional<double>((*value)[index]) : std::nullopt;
    else
        return index < value.size() ? std::optional<double>(value[index]) : std::nullopt;
}

template <class T>
void writeEntry(T& value, std::size_t index, std::optional<double> number)
{
    if constexpr (std::is_same_v<T, std::optional<double>>)
        value = number;
    else if (!number)
        return;
    else if constexpr (std::is_same_v<T, int>)
        value = static_cast<int>(std::lround(*number));
    else if constexpr (std::is_same_v<T, double>)
        value = *number;
    else if constexpr (std::is_same_v<T, std::optional<Triple>>) {
        if (value)
            (*value)[index] = *number;
    } else if (index < value.size())
        value[index] = *number;
}

template <class Owner, class T>
void describe(FieldSpec& spec, const Place<Owner>& place, T Owner::*member)
{
    spec.whole = std::is_same_v<T, int>;
    spec.optional = isOptional<T>;
    spec.list = std::is_same_v<T, std::vector<double>>;
    if constexpr (std::is_same_v<T, Triple> || std::is_same_v<T, std::optional<Triple>>)
        spec.entryNames = {QStringLiteral("x"), QStringLiteral("y"), QStringLiteral("z")};
    else if constexpr (std::is_same_v<T, std::array<double, 2>>)
        spec.entryNames = {QCoreApplication::translate("FieldSpec", "from"),
                           QCoreApplication::translate("FieldSpec", "to")};
    spec.entry = [place, member](std::size_t index) {
        return NumberAccess{[place, member, index](const Setup& setup) -> std::optional<double> {
                                const Owner* owner = place.find(setup);
                                return owner ? readEntry(owner->*member, index) : std::nullopt;
                            },
                            [place, member, index](Setup& setup, std::optional<double> number) {
                                if (Owner* owner = writable(place, setup))
                                    writeEntry(owner->*member, index, number);
                            }};
    };
    if constexpr (std::is_same_v<T, std::vector<double>>) {
        spec.count = [place, member](const Setup& setup) -> std::size_t {
            const Owner* owner = place.find(setup);
            return owner ? (owner->*member).size() : 0;
        };
        spec.resize = [place, member](Setup& setup, std::size_t size) {
            if (Owner* owner = writable(place, setup)) {
                std::vector<double>& values = owner->*member;
                values.resize(size, values.empty() ? 0.0 : values.back() / 2.0);
            }
        };
    } else {
        const auto names = static_cast<std::size_t>(spec.entryNames.size());
        spec.count = [count = names == 0 ? 1 : names](const Setup&) {
            return count;
        };
    }
}

}  // namespace detail

/// The table's field as seen from a row of the form.
template <class Owner>
FieldSpec specOf(const Field<Owner>& field, const Place<Owner>& place)
{
    FieldSpec spec;
    spec.path = place.path + u'.' + QString::fromUtf8(field.key);
    spec.label = displayText(field.label);
    spec.spoken = place.spoken + QStringLiteral(": ") + withinSentence(spec.label);
    spec.unit = displayText(field.unit);
    spec.meaning = displayText(field.meaning);
    spec.min = field.min;
    spec.max = field.max;
    spec.step = field.step;
    std::visit([&](auto member) { detail::describe(spec, place, member); }, field.member);
    return spec;
}

}  // namespace stillbay::ui
