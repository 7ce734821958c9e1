// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/phrase.h"

#include <tl/expected.hpp>

#include <string>
#include <utility>

namespace stillbay {

/// What kind of trouble; the commands turn it into their exit code.
enum class Errc {
    BadInput,  ///< the builder's file or value is wrong
    NoAnswer,  ///< valid input without a trustworthy answer: no rest, no convergence
    Internal,  ///< a bug of ours, caught at a job's edge
};

/// Why an operation on the builder's data gave no value. English, untranslated.
struct Error {
    Errc code = Errc::BadInput;
    std::string what;   ///< one sentence without a full stop: the value, its unit and the bound
    std::string where;  ///< path into the setup, e.g. "mounts.points[2].bay_mm"; empty: whole file

    bool operator==(const Error&) const = default;
};

template <class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(Errc code, std::string what, std::string where = {})
{
    return tl::unexpected<Error>(Error{code, std::move(what), std::move(where)});
}

/// It worked, but the builder should know. `code` is stable, `text` is one plain sentence.
struct Warning {
    std::string code;
    Phrase text;

    bool operator==(const Warning&) const = default;
};

}  // namespace stillbay
