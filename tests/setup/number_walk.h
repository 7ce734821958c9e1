// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/members.h"

#include <string>
#include <variant>

namespace stillbay::test {

/// One number of a setup, where it lives and what its range is.
struct NumberPlace {
    std::string path;
    double min;
    double max;
    std::variant<double*, int*> value;
    std::string label;
    std::string unit;
};

/// Calls a function with every number that a setup holds, those of optional members only where
/// they are set.
template <class Function>
class NumberWalk {
public:
    explicit NumberWalk(Function function) : m_function(function) {}

    template <class T>
    void walk(T& owner, const std::string& path)
    {
        const std::string outer = std::exchange(m_path, path);
        visitMembers(*this, owner);
        m_path = outer;
    }

    void text(const char*, std::string&, std::size_t) {}
    void choice(const char*, auto&) {}
    void curve(const char*, auto&, CountRange) {}

    template <class T>
    void object(const char* key, T& member)
    {
        walk(member, prefix() + key);
    }

    template <class T>
    void list(const char* key, std::vector<T>& entries, CountRange)
    {
        for (std::size_t i = 0; i < entries.size(); ++i)
            walk(entries[i], prefix() + key + '[' + std::to_string(i) + ']');
    }

    template <class T>
    void keyed(const char* key, std::vector<T>& entries, CountRange)
    {
        for (T& entry : entries)
            walk(entry, prefix() + key + '.' + entry.key);
    }

    template <class Owner>
    void numbers(Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            std::visit([&](auto member) { number(field, owner.*member, prefix() + field.key); },
                       field.member);
    }

private:
    std::string prefix() const { return m_path.empty() ? "" : m_path + '.'; }

    template <class Owner, class T>
    void number(const Field<Owner>& field, T& value, const std::string& path)
    {
        if constexpr (requires { value.has_value(); }) {
            if (value)
                number(field, *value, path);
        } else if constexpr (requires { value.begin(); }) {
            for (std::size_t i = 0; i < value.size(); ++i)
                number(field, value[i], path + '[' + std::to_string(i) + ']');
        } else {
            m_function(NumberPlace{path, field.min, field.max, &value, field.label, field.unit});
        }
    }

    Function m_function;
    std::string m_path;
};

template <class Function>
void forEachNumber(Setup& setup, Function function)
{
    NumberWalk<Function>(function).walk(setup, "");
}

}  // namespace stillbay::test
