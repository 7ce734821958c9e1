// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/progress.h"

#include <mutex>
#include <ostream>
#include <string>

namespace stillbay {

/// One line that tells how far a command has come, on a standard error that is a terminal; nowhere
/// else is anything written. The line is gone with this value, and by clear().
class TerminalProgress final {
public:
    explicit TerminalProgress(std::ostream& err);
    ~TerminalProgress() { clear(); }
    TerminalProgress(const TerminalProgress&) = delete;
    TerminalProgress& operator=(const TerminalProgress&) = delete;

    /// "reading frames 42 %"; to be called while this lives.
    Progress of(std::string what);

    void clear();

private:
    void show(const std::string& line);

    std::ostream& m_err;
    const bool m_isTerminal;
    std::mutex m_mutex;
    std::string m_shown;
};

}  // namespace stillbay
