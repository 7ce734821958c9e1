// SPDX-License-Identifier: MIT
#include "core/setup/from_json.h"

#include "core/setup/members.h"
#include "core/setup/sources.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace stillbay {
namespace {

constexpr std::size_t kMostNamed = 10;  // unknown keys spelt out in the warning

/// What reading has to say: the first fault, and the keys nobody knows.
struct Findings {
    std::optional<Error> fault;
    std::vector<std::string> unknownKeys;

    void refuse(Phrase what, std::string where)
    {
        if (!fault)
            fault = Error{Errc::BadInput, std::move(what), std::move(where)};
    }
};

// Sentences stand outside of classes and templates, under whose names the translation tools would
// file them.

// `"180"`, `null`, "a list of 4": the offending value in a message, as it stands in the file.
PhraseArgument valueText(const Json& value)
{
    switch (value.type()) {
        case Json::value_t::object:
            return phrase("an object");
        case Json::value_t::array:
            return phrase("a list of %1", whole(value.size()));
        default:
            return shorten(value.dump());
    }
}

constexpr const char* kNumber = translatable("a number from %1");
constexpr const char* kWholeNumber = translatable("a whole number from %1");
constexpr const char* kNumberOrNull = translatable("null or a number from %1");
constexpr const char* kNumbers = translatable("a list of numbers from %1");
constexpr const char* kTwoNumbers = translatable("a list of 2 numbers from %1");
constexpr const char* kThreeNumbers = translatable("a list of 3 numbers from %1");

template <class Owner>
Phrase oneNumber(const Field<Owner>& field)
{
    return phrase(kNumber, rangeText(field));
}

template <class Owner>
Phrase needText(const Field<Owner>& field)
{
    const char* const need = std::visit(
        [](auto member) {
            using Value = std::remove_cvref_t<decltype(std::declval<Owner>().*member)>;
            if constexpr (std::is_same_v<Value, double>)
                return kNumber;
            else if constexpr (std::is_same_v<Value, int>)
                return kWholeNumber;
            else if constexpr (std::is_same_v<Value, std::optional<double>>)
                return kNumberOrNull;
            else if constexpr (std::is_same_v<Value, std::vector<double>>)
                return kNumbers;
            else if constexpr (std::is_same_v<Value, std::array<double, 2>>)
                return kTwoNumbers;
            else
                return kThreeNumbers;
        },
        field.member);
    return phrase(need, rangeText(field));
}

Phrase entriesText(CountRange range)
{
    return phrase("a list of %1 entries", rangeText(range));
}

Phrase pairsText(CountRange range)
{
    return phrase("a list of %1 pairs", rangeText(range));
}

Phrase pairText()
{
    return phrase(kTwoNumbers, rangeText(0, 1, ""));
}

Phrase missing(PhraseArgument what, Phrase needed)
{
    return phrase("%1 is missing, needed: %2", std::move(what), std::move(needed));
}

Phrase mistaken(PhraseArgument what, const Json& value, Phrase wanted)
{
    return phrase("%1 is %2, must be %3", std::move(what), valueText(value), std::move(wanted));
}

Phrase noObject(const Json& value)
{
    return mistaken(phrase("Value"), value, phrase("an object"));
}

Phrase noObjectAt(const char* key, const Json& value)
{
    return mistaken(labelOf(key), value, phrase("an object"));
}

Phrase noText(const char* key, const Json& value)
{
    return mistaken(labelOf(key), value, phrase("text"));
}

Phrase notOffered(const Choice& choice, const Json& value)
{
    if (choice.words.size() == 4)
        return phrase("%1 is %2, allowed %3, %4, %5 or %6", phrase(choice.label), valueText(value),
                      quote(choice.words[0]), quote(choice.words[1]), quote(choice.words[2]),
                      quote(choice.words[3]));
    if (choice.words.size() == 3)
        return phrase("%1 is %2, allowed %3, %4 or %5", phrase(choice.label), valueText(value),
                      quote(choice.words[0]), quote(choice.words[1]), quote(choice.words[2]));
    if (choice.words.size() != 2)
        return phrase("%1 is %2, allowed one of %3", phrase(choice.label), valueText(value),
                      quotedWords(choice));
    return phrase("%1 is %2, allowed %3 or %4", phrase(choice.label), valueText(value),
                  quote(choice.words[0]), quote(choice.words[1]));
}

Phrase tooManyEntries(const char* key, std::size_t count, CountRange range)
{
    return phrase("%1 has %2 entries, allowed %3", labelOf(key), whole(count), rangeText(range));
}

Phrase angleBesideHole(const char* label)
{
    return phrase("%1 stands beside an airframe hole: a tube has a hole or two angles",
                  phrase(label));
}

bool readNumber(const Json& value, double& number)
{
    if (!value.is_number())
        return false;
    number = value.get<double>();
    return true;
}

bool readNumber(const Json& value, int& number)
{
    constexpr double kLargest = 1e9;  // fits an int; ranges are far narrower
    double real = 0.0;
    if (!readNumber(value, real) || real != std::floor(real) || std::abs(real) > kLargest)
        return false;
    number = static_cast<int>(real);
    return true;
}

template <std::size_t N>
bool readNumber(const Json& value, std::array<double, N>& numbers)
{
    return value.is_array() && value.size() == N &&
           std::equal(value.begin(), value.end(), numbers.begin(),
                      [](const Json& entry, double& number) { return readNumber(entry, number); });
}

bool readNumber(const Json& value, std::vector<double>& numbers)
{
    if (!value.is_array())
        return false;
    numbers.assign(value.size(), 0.0);
    return std::equal(value.begin(), value.end(), numbers.begin(),
                      [](const Json& entry, double& number) { return readNumber(entry, number); });
}

template <class T>
bool readNumber(const Json& value, std::optional<T>& number)
{
    if (value.is_null()) {
        number.reset();
        return true;
    }
    return readNumber(value, number.emplace());
}

/// Reads the JSON object of one struct. Keys that nobody asked for become its extras.
class Reader {
public:
    template <class T>
    static void read(const Json& object, const std::string& path, T& owner, Findings& findings)
    {
        if (!object.is_object()) {
            findings.refuse(noObject(object), path);
            return;
        }
        Reader reader(object, path, findings);
        if constexpr (std::is_same_v<T, Setup>)
            reader.m_known = {"format", "version"};
        visitMembers(reader, owner);
        reader.keepExtras(owner.extras);
    }

    void text(const char* key, std::string& value, std::size_t)
    {
        const Json* found = find(key);
        if (found && found->is_string())
            value = found->get_ref<const std::string&>();
        else if (found)
            refuse(key, noText(key, *found));
    }

    template <class Enum>
    void choice(const char* key, Enum& value)
    {
        const Choice& offered = choiceOf<Enum>();
        const Json* found = find(key);
        const auto word = found ? std::find(offered.words.begin(), offered.words.end(), *found)
                                : offered.words.begin();
        if (word == offered.words.end())
            refuse(key, notOffered(offered, *found));
        else
            value = static_cast<Enum>(word - offered.words.begin());
    }

    /// A missing object reads like an empty one: what it needs is then named one by one.
    template <class T>
    void object(const char* key, T& member)
    {
        const Json* found = find(key);
        const Json empty = Json::object();
        read(found ? *found : empty, joinPath(m_path, key), member, m_findings);
    }

    template <class T>
    void list(const char* key, std::vector<T>& entries, CountRange range)
    {
        const Json* found = find(key);
        if (!found) {
            if (range.min > 0)
                refuse(key, missing(listLabelOf(key), entriesText(range)));
            return;
        }
        if (!found->is_array() || found->size() > range.max) {
            refuse(key, mistaken(listLabelOf(key), *found, entriesText(range)));
            return;
        }
        entries.assign(found->size(), T{});
        for (std::size_t i = 0; i < entries.size(); ++i)
            read((*found)[i], joinPath(joinPath(m_path, key), i), entries[i], m_findings);
    }

    /// Null means no curve, as an absent one does.
    void curve(const char* key, ThrottleCurve& pairs, CountRange range)
    {
        pairs.clear();
        const Json* found = find(key);
        if (!found || found->is_null())
            return;
        if (!found->is_array() || found->size() > range.max)
            return refuse(key, mistaken(labelOf(key), *found, pairsText(range)));
        pairs.resize(found->size());
        for (std::size_t i = 0; i < pairs.size(); ++i)
            if (!readNumber((*found)[i], pairs[i]))
                return m_findings.refuse(mistaken(labelOf(key), (*found)[i], pairText()),
                                         joinPath(joinPath(m_path, key), i));
    }

    template <class T>
    void keyed(const char* key, std::vector<T>& entries, CountRange range)
    {
        const Json* found = find(key);
        if (!found)
            return;
        if (!found->is_object())
            return refuse(key, noObjectAt(key, *found));
        if (found->size() > range.max)
            return refuse(key, tooManyEntries(key, found->size(), range));
        const std::string path = joinPath(m_path, key);
        for (const auto& [name, value] : found->items()) {
            T& entry = entries.emplace_back();
            entry.key = name;
            read(value, joinPath(path, shorten(name)), entry, m_findings);
        }
    }

    template <class Owner>
    void numbers(Owner& owner)
    {
        for (const Field<Owner>& field : fieldsOf<Owner>())
            number(field, owner, true);
    }

    /// A hole given as anchor_mm makes the point a drilled one, and its angles unwelcome; what
    /// the validator says of an own stretch there leaves null allowed.
    void numbers(MountPoint& point)
    {
        const auto anchor = m_object.find("anchor_mm");
        const bool drilled = anchor != m_object.end() && !anchor->is_null();
        for (const Field<MountPoint>& field : fieldsOf<MountPoint>()) {
            const bool shown = isShown(field, drilled);
            if (drilled && !shown && field.presence == Presence::Required &&
                m_object.contains(field.key))
                refuse(field.key, angleBesideHole(field.label));
            number(field, point, shown);
        }
    }

private:
    Reader(const Json& object, const std::string& path, Findings& findings)
        : m_object(object), m_path(path), m_findings(findings)
    {
    }

    void refuse(const char* key, Phrase what)
    {
        m_findings.refuse(std::move(what), joinPath(m_path, key));
    }

    const Json* find(const char* key)
    {
        m_known.push_back(key);
        const auto found = m_object.find(key);
        return found == m_object.end() ? nullptr : &*found;
    }

    template <class Owner>
    void number(const Field<Owner>& field, Owner& owner, bool needed)
    {
        const Json* found = find(field.key);
        if (!found) {
            if (needed && field.presence == Presence::Required)
                refuse(field.key, missing(phrase(field.label), needText(field)));
            setMissing(field, owner);
            return;
        }
        const bool done = std::visit([&](auto member) { return readNumber(*found, owner.*member); },
                                     field.member);
        if (!done)
            refuseValue(field, *found);
    }

    /// Names the one entry of a list that is no number, else the whole value.
    template <class Owner>
    void refuseValue(const Field<Owner>& field, const Json& value)
    {
        const Phrase label = phrase(field.label);
        for (std::size_t i = 0; value.is_array() && i < value.size(); ++i)
            if (!value[i].is_number())
                return m_findings.refuse(mistaken(label, value[i], oneNumber(field)),
                                         joinPath(joinPath(m_path, field.key), i));
        refuse(field.key, mistaken(label, value, needText(field)));
    }

    /// An absent key is the member's default; where null is allowed, it means null.
    template <class Owner>
    static void setMissing(const Field<Owner>& field, Owner& owner)
    {
        std::visit(
            [&](auto member) {
                if constexpr (requires { (owner.*member).reset(); })
                    (owner.*member).reset();
            },
            field.member);
    }

    void keepExtras(Extras& extras)
    {
        for (const auto& [key, value] : m_object.items()) {
            if (std::find(m_known.begin(), m_known.end(), key) != m_known.end())
                continue;
            extras.emplace_back(key, value.dump());
            m_findings.unknownKeys.push_back(joinPath(m_path, shorten(key)));
        }
    }

    const Json& m_object;
    const std::string& m_path;
    Findings& m_findings;
    std::vector<std::string_view> m_known;
};

Warning unknownKeysWarning(const std::vector<std::string>& paths)
{
    const std::size_t named = std::min(paths.size(), kMostNamed);
    std::string list;
    for (std::size_t i = 0; i < named; ++i)
        list += (i > 0 ? ", " : "") + paths[i];
    if (paths.size() == 1)
        return {"unknown-key", phrase("Unknown key kept but not used: %1.", list)};
    if (named == paths.size())
        return {"unknown-key", phrase("Unknown keys kept but not used: %1.", list)};
    return {"unknown-key", phrase("Unknown keys kept but not used: %1 and %2 more.", list,
                                  fixed(static_cast<double>(paths.size() - named), 0))};
}

}  // namespace

Result<Setup> setupFromJson(const Json& root, std::vector<Warning>& warnings)
{
    Setup setup;
    Findings findings;
    Reader::read(root, "", setup, findings);
    if (findings.fault)
        return tl::unexpected<Error>(*std::move(findings.fault));
    for (const std::string& key : sourcesOfNothing(setup))
        findings.unknownKeys.push_back(joinPath("sources", shorten(key)));
    if (!findings.unknownKeys.empty())
        warnings.push_back(unknownKeysWarning(findings.unknownKeys));
    return setup;
}

}  // namespace stillbay
