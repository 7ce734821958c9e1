// SPDX-License-Identifier: MIT
#include "core/setup/number_at.h"

#include "core/setup/members.h"
#include "core/setup/wording.h"

#include <cmath>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>

namespace stillbay {
namespace {

/// Looks for the number of one path and hands it over.
template <class Found>
class NumberSearch {
public:
    NumberSearch(std::string_view key, Found found) : m_key(key), m_found(std::move(found)) {}

    void walk(auto& owner, std::string path)
    {
        if (!path.empty() && !m_key.starts_with(path))
            return;
        std::swap(path, m_path);
        visitMembers(*this, owner);
        std::swap(path, m_path);
    }

    void text(const char*, const std::string&, std::size_t) {}
    void choice(const char*, auto&) {}
    void curve(const char*, auto&, CountRange) {}
    void keyed(const char*, auto&, CountRange) {}
    void object(const char* key, auto& member) { walk(member, joinPath(m_path, key)); }

    void list(const char* key, auto& entries, CountRange)
    {
        for (std::size_t i = 0; i < entries.size(); ++i)
            walk(entries[i], joinPath(joinPath(m_path, key), i));
    }

    template <class Owner>
    void numbers(Owner& owner)
    {
        for (const auto& field : fieldsOf<std::remove_const_t<Owner>>())
            if (joinPath(m_path, field.key) == m_key)
                std::visit([&](auto member) { m_found(owner.*member); }, field.member);
    }

private:
    std::string_view m_key;
    Found m_found;
    std::string m_path;
};

}  // namespace

std::optional<double> numberAt(const Setup& setup, std::string_view key)
{
    std::optional<double> number;
    NumberSearch search(key, [&](const auto& value) {
        using Value = std::remove_cvref_t<decltype(value)>;
        if constexpr (std::is_arithmetic_v<Value>)
            number = static_cast<double>(value);
        else if constexpr (std::is_same_v<Value, std::optional<double>>)
            number = value;
    });
    search.walk(setup, "");
    return number;
}

bool putNumber(Setup& setup, std::string_view key, double number)
{
    bool isThere = false;
    NumberSearch search(key, [&](auto& value) {
        using Value = std::remove_cvref_t<decltype(value)>;
        isThere = std::is_arithmetic_v<Value> || std::is_same_v<Value, std::optional<double>>;
        if constexpr (std::is_integral_v<Value>)
            value = static_cast<Value>(std::lround(number));
        else if constexpr (std::is_same_v<Value, double> ||
                           std::is_same_v<Value, std::optional<double>>)
            value = number;
    });
    search.walk(setup, "");
    return isThere;
}

}  // namespace stillbay
