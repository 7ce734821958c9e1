// SPDX-License-Identifier: MIT
#include "app/commands/terminal_progress.h"

#include "core/base/format.h"

#include <algorithm>
#include <iostream>
#include <unistd.h>
#include <utility>

namespace stillbay {

TerminalProgress::TerminalProgress(std::ostream& err)
    : m_err(err), m_isTerminal(&err == &std::cerr && ::isatty(STDERR_FILENO) == 1)
{
}

Progress TerminalProgress::of(std::string what)
{
    if (!m_isTerminal)
        return {};
    return [this, what = std::move(what)](std::size_t done, std::size_t total) {
        const double share =
            static_cast<double>(done) / static_cast<double>(std::max<std::size_t>(1, total));
        show(what + formatted(" %3.0f %%", 100 * share));
    };
}

void TerminalProgress::show(const std::string& line)
{
    const std::lock_guard lock(m_mutex);
    if (line == m_shown)
        return;
    const std::size_t rest = m_shown.size() > line.size() ? m_shown.size() - line.size() : 0;
    m_err << '\r' << line << std::string(rest, ' ') << std::flush;
    m_shown = line;
}

void TerminalProgress::clear()
{
    const std::lock_guard lock(m_mutex);
    if (m_shown.empty())
        return;
    m_err << '\r' << std::string(m_shown.size(), ' ') << '\r' << std::flush;
    m_shown.clear();
}

}  // namespace stillbay
