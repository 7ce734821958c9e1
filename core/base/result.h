// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <tl/expected.hpp>

#include <cstddef>
#include <exception>
#include <optional>
#include <string>
#include <utility>

namespace stillbay {

/// What kind of trouble; the commands turn it into their exit code.
enum class Errc {
    BadInput,  ///< the builder's file or value is wrong
    NoAnswer,  ///< valid input without a trustworthy answer: no rest, no convergence
    Internal,  ///< a bug of ours, caught at a job's edge
};

/// A character of a text, both from 1.
struct TextPlace {
    std::size_t line = 1, column = 1;

    bool operator==(const TextPlace&) const = default;
};

/// Why an operation on the builder's data gave no value.
struct Error {
    Errc code = Errc::BadInput;
    Phrase what;        ///< one sentence without a full stop: the value, its unit and the bound
    std::string where;  ///< path into the setup, e.g. "mounts.points[2].bay_mm"; empty: whole file
    std::optional<TextPlace> place = {};  ///< in a text that has no paths yet

    bool operator==(const Error&) const = default;
};

template <class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(Errc code, Phrase what, std::string where = {})
{
    return tl::unexpected<Error>(Error{code, std::move(what), std::move(where)});
}

/// A bug of ours, caught at a job's edge.
inline tl::unexpected<Error> faultInProgram(const std::exception& exception)
{
    return fail(Errc::Internal,
                phrase("a fault in the program: %1", std::string(exception.what())));
}

/// The path, or "line 3, column 7"; says nothing where the whole file is meant.
inline Phrase whereText(const Error& error)
{
    if (error.place)
        return phrase("line %1, column %2", whole(error.place->line), whole(error.place->column));
    return error.where.empty() ? Phrase{} : verbatim(error.where);
}

/// It worked, but the builder should know. `code` is stable, `text` is one plain sentence.
struct Warning {
    std::string code;
    Phrase text;

    bool operator==(const Warning&) const = default;
};

}  // namespace stillbay
