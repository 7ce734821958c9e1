// SPDX-License-Identifier: MIT
#include "core/setup/sources.h"

#include "core/setup/members.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>
#include <variant>

namespace stillbay {
namespace {

template <class T>
bool hasValue(const std::optional<T>& number)
{
    return number.has_value();
}

template <class T>
bool hasValue(const std::vector<T>& numbers)
{
    return !numbers.empty();
}

bool hasValue(const auto&)
{
    return true;
}

enum class Which { All, WithValue };

/// Collects the paths of the numbers that the file of a setup shows, in its order.
class NumberPaths {
public:
    explicit NumberPaths(Which which) : m_which(which) {}

    std::vector<std::string> paths;

    template <class T>
    void walk(const T& owner, std::string path)
    {
        std::swap(path, m_path);
        visitMembers(*this, owner);
        std::swap(path, m_path);
    }

    void text(const char*, const std::string&, std::size_t) {}
    void choice(const char*, auto) {}
    void keyed(const char*, const auto&, CountRange) {}

    template <class T>
    void object(const char* key, const T& member)
    {
        walk(member, joinPath(m_path, key));
    }

    template <class T>
    void list(const char* key, const std::vector<T>& entries, CountRange)
    {
        for (std::size_t i = 0; i < entries.size(); ++i)
            walk(entries[i], joinPath(joinPath(m_path, key), i));
    }

    template <class Owner>
    void numbers(const Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            if (isShown(field, isDrilled(owner)) && isWanted(field, owner))
                paths.push_back(joinPath(m_path, field.key));
    }

private:
    template <class Owner>
    bool isWanted(const Field<Owner>& field, const Owner& owner) const
    {
        return m_which == Which::All ||
               std::visit([&](auto member) { return hasValue(owner.*member); }, field.member);
    }

    static bool isDrilled(const auto&) { return false; }
    static bool isDrilled(const MountPoint& point) { return point.anchor_mm.has_value(); }

    Which m_which;
    std::string m_path;
};

std::vector<std::string> pathsOf(const Setup& setup, Which which)
{
    NumberPaths numbers(which);
    numbers.walk(setup, "");
    return std::move(numbers.paths);
}

}  // namespace

const Source* sourceOf(const Setup& setup, std::string_view key)
{
    const auto found = std::find_if(setup.sources.begin(), setup.sources.end(),
                                    [&](const Source& source) { return source.key == key; });
    return found == setup.sources.end() ? nullptr : &*found;
}

void putSource(Setup& setup, Source source)
{
    const auto found = std::find_if(setup.sources.begin(), setup.sources.end(),
                                    [&](const Source& old) { return old.key == source.key; });
    if (found == setup.sources.end())
        setup.sources.push_back(std::move(source));
    else
        *found = std::move(source);
}

void dropSource(Setup& setup, std::string_view key)
{
    std::erase_if(setup.sources, [&](const Source& source) { return source.key == key; });
}

std::vector<std::string> numbersOf(const Setup& setup)
{
    return pathsOf(setup, Which::WithValue);
}

std::vector<std::string> sourcesOfNothing(const Setup& setup)
{
    std::vector<std::string> unknown;
    if (setup.sources.empty())
        return unknown;
    const std::vector<std::string> paths = pathsOf(setup, Which::All);
    const std::set<std::string_view> numbers(paths.begin(), paths.end());
    for (const Source& source : setup.sources)
        if (!numbers.contains(source.key))
            unknown.push_back(source.key);
    return unknown;
}

}  // namespace stillbay
