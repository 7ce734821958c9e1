// SPDX-License-Identifier: MIT
#include "core/setup/sources.h"

#include "core/setup/members.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <set>
#include <system_error>
#include <utility>
#include <variant>

namespace stillbay {
namespace {

bool isGiven(const auto& value)
{
    if constexpr (requires { value.has_value(); })
        return value.has_value();
    else if constexpr (requires { value.empty(); })
        return !value.empty();
    else
        return true;
}

/// Tells the path of each number that the file of a setup shows, and whether it is given.
template <class Tell>
class NumberPaths {
public:
    explicit NumberPaths(Tell tell) : m_tell(std::move(tell)) {}

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

    void curve(const char* key, const ThrottleCurve& pairs, CountRange)
    {
        m_tell(joinPath(m_path, key), !pairs.empty());
    }

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
            if (isShown(field, isDrilled(owner)))
                std::visit(
                    [&](auto member) {
                        m_tell(joinPath(m_path, field.key), isGiven(owner.*member));
                    },
                    field.member);
    }

private:
    static bool isDrilled(const auto&) { return false; }
    static bool isDrilled(const MountPoint& point) { return point.anchor_mm.has_value(); }

    Tell m_tell;
    std::string m_path;
};

/// Whether the object or list at place holds what is at path.
bool holds(std::string_view place, std::string_view path)
{
    return path.size() > place.size() && path.starts_with(place) &&
           (path[place.size()] == '.' || path[place.size()] == '[');
}

/// The row of the list that a path leads into, and the path within it; none: it leads elsewhere.
struct RowPath {
    std::size_t row;
    std::string_view inside;  ///< ".mass_g"
};

std::optional<RowPath> rowOf(std::string_view list, std::string_view path)
{
    if (!path.starts_with(list) || path.size() <= list.size() || path[list.size()] != '[')
        return {};
    const std::string_view rest = path.substr(list.size() + 1);
    RowPath found{};
    const auto [end, error] = std::from_chars(rest.data(), rest.data() + rest.size(), found.row);
    const auto digits = static_cast<std::size_t>(end - rest.data());
    if (error != std::errc() || digits == rest.size() || rest[digits] != ']')
        return {};
    found.inside = rest.substr(digits + 1);
    return found;
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
    std::vector<std::string> paths;
    NumberPaths numbers([&](std::string path, bool given) {
        if (given)
            paths.push_back(std::move(path));
    });
    numbers.walk(setup, "");
    return paths;
}

bool isOwn(const Setup& setup, std::string_view key)
{
    const Source* const source = sourceOf(setup, key);
    return !source || (source->from != Origin::Typical && source->from != Origin::Estimated);
}

std::vector<OwnNumbers> ownNumbers(const Setup& setup, std::span<const std::string> places)
{
    std::vector<OwnNumbers> counts(places.size());
    NumberPaths numbers([&](const std::string& path, bool given) {
        std::size_t best = places.size();
        for (std::size_t k = 0; k < places.size(); ++k)
            if (holds(places[k], path) &&
                (best == places.size() || places[k].size() > places[best].size()))
                best = k;
        if (!given || best == places.size())
            return;
        ++counts[best].given;
        counts[best].own += isOwn(setup, path) ? 1 : 0;
    });
    numbers.walk(setup, "");
    return counts;
}

void swapRowSources(Setup& setup, std::string_view list, std::size_t a, std::size_t b)
{
    for (Source& source : setup.sources)
        if (const auto found = rowOf(list, source.key);
            found && (found->row == a || found->row == b))
            source.key = joinPath(list, found->row == a ? b : a) + std::string(found->inside);
}

void dropRowSources(Setup& setup, std::string_view list, std::size_t row)
{
    std::erase_if(setup.sources, [&](const Source& source) {
        const auto found = rowOf(list, source.key);
        return found && found->row == row;
    });
    for (Source& source : setup.sources)
        if (const auto found = rowOf(list, source.key); found && found->row > row)
            source.key = joinPath(list, found->row - 1) + std::string(found->inside);
}

std::vector<std::string> sourcesOfNothing(const Setup& setup)
{
    std::vector<std::string> unknown;
    if (setup.sources.empty())
        return unknown;
    std::set<std::string, std::less<>> paths;
    NumberPaths numbers([&](std::string path, bool) { paths.insert(std::move(path)); });
    numbers.walk(setup, "");
    for (const Source& source : setup.sources)
        if (!paths.contains(source.key))
            unknown.push_back(source.key);
    return unknown;
}

}  // namespace stillbay
