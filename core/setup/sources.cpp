// SPDX-License-Identifier: MIT
#include "core/setup/sources.h"

#include "core/setup/members.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <set>
#include <utility>

namespace stillbay {
namespace {

/// Collects the paths of the numbers that the file of a setup shows.
class NumberPaths {
public:
    std::set<std::string, std::less<>> paths;

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
            if (isShown(field, isDrilled(owner)))
                paths.insert(joinPath(m_path, field.key));
    }

private:
    static bool isDrilled(const auto&) { return false; }
    static bool isDrilled(const MountPoint& point) { return point.anchor_mm.has_value(); }

    std::string m_path;
};

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

std::vector<std::string> sourcesOfNothing(const Setup& setup)
{
    std::vector<std::string> unknown;
    if (setup.sources.empty())
        return unknown;
    NumberPaths numbers;
    numbers.walk(setup, "");
    for (const Source& source : setup.sources)
        if (!numbers.paths.contains(source.key))
            unknown.push_back(source.key);
    return unknown;
}

}  // namespace stillbay
