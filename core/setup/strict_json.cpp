// SPDX-License-Identifier: MIT
#include "core/setup/strict_json.h"

#include "core/base/printable.h"
#include "core/setup/wording.h"

#include <algorithm>
#include <cctype>
#include <string>
#include <unordered_set>
#include <vector>

namespace stillbay {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr int kNumberOutOfRange = 406;  // the library's id for a literal beyond double

bool isWordCharacter(char c)
{
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == '+' || c == '.';
}

/// The word around a byte, or that one character.
std::string_view wordAt(std::string_view text, std::size_t at)
{
    std::size_t begin = at;
    std::size_t end = at + 1;
    if (isWordCharacter(text[at])) {
        while (begin > 0 && isWordCharacter(text[begin - 1]))
            --begin;
        while (end < text.size() && isWordCharacter(text[end]))
            ++end;
    } else {
        while (end < text.size() && findNonUtf8(text.substr(begin, end - begin)) == 0)
            ++end;
    }
    return text.substr(begin, end - begin);
}

// Columns count characters, not bytes.
TextPlace placeOf(std::string_view text, std::size_t at)
{
    const std::string_view before = text.substr(0, at);
    const std::size_t newline = before.rfind('\n');
    const std::string_view line =
        newline == std::string_view::npos ? before : before.substr(newline + 1);
    const auto isStart = [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    };
    return {static_cast<std::size_t>(1 + std::count(before.begin(), before.end(), '\n')),
            static_cast<std::size_t>(1 + std::count_if(line.begin(), line.end(), isStart))};
}

Error syntaxError(std::string_view text, std::size_t bytesRead, int libraryId)
{
    if (bytesRead > text.size())
        return {Errc::BadInput,
                phrase("The file is cut off: its text ends before the last bracket closes"),
                {},
                placeOf(text, text.size())};
    const std::size_t at = bytesRead == 0 ? 0 : bytesRead - 1;
    const std::string_view word = wordAt(text, at);
    const std::string quoted = quote(word);
    const bool isControl = static_cast<unsigned char>(text[at]) < 0x20;
    Phrase what = isControl
                      ? phrase("The file is not JSON: unexpected line break or control character")
                      : phrase("The file is not JSON: unexpected %1", quoted);
    if (libraryId == kNumberOutOfRange)
        what = phrase("The file holds the number %1, which is too large", quoted);
    else if (word.find("NaN") != std::string_view::npos ||
             word.find("Infinity") != std::string_view::npos)
        what = phrase("The file holds %1, which is no number in JSON", quoted);
    return {Errc::BadInput,
            std::move(what),
            {},
            placeOf(text, static_cast<std::size_t>(word.data() - text.data()))};
}

// Sentences stand outside of classes, under whose names the translation tools would file them.

Phrase appearsTwice(std::string_view key)
{
    return phrase("Key %1 appears twice", quote(key));
}

Phrase oneTooMany(std::string_view key)
{
    return phrase("Key %1 is one too many, allowed up to %2 in an object", quote(key),
                  whole(kMaxJsonMembers));
}

Phrase nestsTooDeep()
{
    return phrase("The file nests deeper than %1 levels", whole(kMaxJsonDepth));
}

/// Sees every event of the library's parser and stops it at the first fault. Builds nothing: the
/// depth and the width are known to be harmless before any tree exists.
class FaultFinder : public nlohmann::json_sax<Json> {
public:
    explicit FaultFinder(std::string_view text) : m_text(text) {}

    /// What stopped the parser.
    Error takeFault() { return std::move(m_fault); }

    bool null() override { return endValue(); }
    bool boolean(bool) override { return endValue(); }
    bool number_integer(number_integer_t) override { return endValue(); }
    bool number_unsigned(number_unsigned_t) override { return endValue(); }
    bool number_float(number_float_t, const string_t&) override { return endValue(); }
    bool string(string_t&) override { return endValue(); }
    bool binary(binary_t&) override { return endValue(); }

    bool start_object(std::size_t) override { return open(false); }
    bool end_object() override { return close(); }
    bool start_array(std::size_t) override { return open(true); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override
    {
        Level& level = m_levels.back();
        level.key = name;
        if (!level.keys.insert(name).second)
            return refuse(appearsTwice(name), path());
        if (level.keys.size() > kMaxJsonMembers)
            return refuse(oneTooMany(name), path());
        return true;
    }

    bool parse_error(std::size_t bytesRead, const std::string&,
                     const Json::exception& error) override
    {
        m_fault = syntaxError(m_text, bytesRead, error.id);
        return false;
    }

private:
    struct Level {
        bool isArray = false;
        std::size_t index = 0;                 // of an array's entry
        std::string key;                       // of an object's member
        std::unordered_set<std::string> keys;  // seen so far
    };

    bool refuse(Phrase what, std::string where)
    {
        m_fault = Error{Errc::BadInput, std::move(what), std::move(where)};
        return false;
    }

    bool open(bool isArray)
    {
        if (m_levels.size() == kMaxJsonDepth)
            return refuse(nestsTooDeep(), shorten(path()));
        m_levels.push_back({isArray, 0, {}, {}});
        return true;
    }

    bool close()
    {
        m_levels.pop_back();
        return endValue();
    }

    bool endValue()
    {
        if (!m_levels.empty())
            ++m_levels.back().index;
        return true;
    }

    std::string path() const
    {
        std::string path;
        for (const Level& level : m_levels)
            path = level.isArray ? joinPath(path, level.index) : joinPath(path, shorten(level.key));
        return path;
    }

    std::string_view m_text;
    std::vector<Level> m_levels;
    Error m_fault;
};

}  // namespace

Result<Json> parseStrictJson(std::string_view text)
{
    if (text.size() > kMaxJsonBytes)
        return fail(Errc::BadInput, phrase("The file is larger than %1 MB, far more than a setup "
                                           "needs",
                                           whole(kMaxJsonBytes >> 20U)));
    if (text.starts_with(kByteOrderMark))
        text.remove_prefix(kByteOrderMark.size());
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return fail(Errc::BadInput, phrase("The file is empty"));
    // The library takes a NUL byte for the end of the text.
    const std::size_t bad = std::min(findNonUtf8(text), text.find('\0'));
    if (bad != std::string_view::npos)
        return tl::unexpected<Error>(
            {Errc::BadInput, phrase("The file is not UTF-8 text"), {}, placeOf(text, bad)});

    FaultFinder finder(text);
    if (!Json::sax_parse(text, &finder))
        return tl::unexpected<Error>(finder.takeFault());
    return Json::parse(text);
}

}  // namespace stillbay
