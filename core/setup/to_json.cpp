// SPDX-License-Identifier: MIT
#include "core/setup/to_json.h"

#include "core/base/check.h"
#include "core/setup/members.h"
#include "core/setup/migrate.h"

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace stillbay {
namespace {

Json numberToJson(double value)
{
    constexpr double kLargestWhole = 1e15;  // every whole number below has its own double
    if (value == std::floor(value) && std::abs(value) < kLargestWhole)
        return static_cast<std::int64_t>(value);  // 180, not 180.0, and no -0
    return value;
}

Json numberToJson(int value)
{
    return value;
}

Json numberToJson(const auto& values)
{
    Json list = Json::array();
    for (const double value : values)
        list.push_back(numberToJson(value));
    return list;
}

template <class T>
Json numberToJson(const std::optional<T>& value)
{
    return value ? numberToJson(*value) : Json(nullptr);
}

/// Builds the JSON object of one struct.
class Writer {
public:
    template <class T>
    static Json write(const T& owner, Json object = Json::object())
    {
        Writer writer(std::move(object));
        visitMembers(writer, owner);
        writer.addExtras(owner.extras);
        return std::move(writer.m_object);
    }

    void text(const char* key, const std::string& value, std::size_t) { m_object[key] = value; }

    template <class Enum>
    void choice(const char* key, Enum value)
    {
        m_object[key] = choiceOf<Enum>().words[static_cast<std::size_t>(value)];
    }

    template <class T>
    void object(const char* key, const T& member)
    {
        m_object[key] = write(member);
    }

    template <class T>
    void list(const char* key, const std::vector<T>& entries, CountRange range)
    {
        if (entries.empty() && range.isWrittenWhereSet)
            return;
        Json list = Json::array();
        for (const T& entry : entries)
            list.push_back(write(entry));
        m_object[key] = std::move(list);
    }

    void curve(const char* key, const ThrottleCurve& pairs, CountRange)
    {
        if (pairs.empty())
            return;
        Json list = Json::array();
        for (const auto& pair : pairs)
            list.push_back(numberToJson(pair));
        m_object[key] = std::move(list);
    }

    template <class T>
    void keyed(const char* key, const std::vector<T>& entries, CountRange)
    {
        if (entries.empty())
            return;
        Json object = Json::object();
        for (const T& entry : entries)
            object[entry.key] = write(entry);
        m_object[key] = std::move(object);
    }

    template <class Owner>
    void numbers(const Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            if (isShown(field, isDrilled(owner)))
                std::visit([&](auto member) { number(field, owner.*member); }, field.member);
    }

private:
    explicit Writer(Json object) : m_object(std::move(object)) {}

    template <class Owner, class T>
    void number(const Field<Owner>& field, const T& value)
    {
        if constexpr (requires { value.has_value(); })
            if (field.presence == Presence::WrittenWhereSet && !value)
                return;
        m_object[field.key] = numberToJson(value);
    }

    template <class Owner>
    static bool isDrilled(const Owner&)
    {
        return false;
    }
    static bool isDrilled(const MountPoint& point) { return point.anchor_mm.has_value(); }

    void addExtras(const Extras& extras)
    {
        for (const auto& [key, rawText] : extras) {
            check(!m_object.contains(key), "an extra has the name of a known key");
            Json value = Json::parse(rawText, nullptr, false);
            check(!value.is_discarded(), "an extra is not JSON");
            m_object[key] = std::move(value);
        }
    }

    Json m_object;
};

}  // namespace

Json setupToJson(const Setup& setup)
{
    return Writer::write(setup, {{"format", kSetupFormat}, {"version", kSetupVersion}});
}

}  // namespace stillbay
