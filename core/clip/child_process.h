// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/clip/descriptor.h"

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <filesystem>
#include <optional>
#include <span>
#include <stop_token>
#include <string>
#include <string_view>
#include <sys/types.h>
#include <vector>

namespace stillbay {

/// How long one call waits for a child.
struct Patience {
    std::chrono::steady_clock::time_point until;
    std::stop_token stop;
};

/// From now on for so long.
Patience patienceOf(double seconds, std::stop_token stop);

/// What becomes of a line that a child writes to its standard error.
enum class LineUse {
    Take,      ///< handed out by nextLine()
    Remember,  ///< kept for lastWords()
    Ignore,
};

/// How a child ended.
struct Ending {
    int exitCode = 0;
    int signal = 0;  ///< that ended it; 0: none did

    bool isGood() const { return exitCode == 0 && signal == 0; }
};

/// A program at work beside this one, started from a list of arguments that no shell sees, in a
/// process group of its own. It reads nothing, and is ended and reaped, with all that it started,
/// no later than with this value. What it writes is read as it comes and never gathered without
/// bounds; it may have no more than kMostChildMemory_bytes of memory where the system can limit it.
class ChildProcess final {
public:
    /// @param program  its file
    /// @param sort     says what each line of its standard error is for
    /// @error BadInput  the system does not start it.
    static Result<ChildProcess> start(const std::filesystem::path& program,
                                      const std::vector<std::string>& arguments,
                                      LineUse (*sort)(std::string_view line));

    ChildProcess(ChildProcess&& other) noexcept;
    ChildProcess& operator=(ChildProcess&& other) noexcept;
    ~ChildProcess();

    /// Fills the span from its standard output; less only at the end of that.
    ///
    /// @error BadInput  it stays silent for longer than the patience lasts; it is ended then.
    /// @error NoAnswer  stopped; it is ended then.
    Result<std::size_t> read(std::span<std::uint8_t> into, const Patience& patience);

    /// The next line to be taken from its standard error; none where that has ended, or where
    /// standard output has something to read although no such line was written before.
    ///
    /// @error BadInput, NoAnswer  as read().
    Result<std::optional<std::string>> nextLine(const Patience& patience);

    /// Waits for its end.
    ///
    /// @error BadInput, NoAnswer  as read().
    Result<Ending> finish(const Patience& patience);

    /// Ends it now.
    void end() noexcept;

    /// The remembered lines of its standard error, of many the last.
    const std::deque<std::string>& remembered() const { return m_remembered; }
    /// The last of them; empty where there was none.
    std::string lastWords() const { return m_remembered.empty() ? "" : m_remembered.back(); }

    /// Its number at the system; -1 once it has been reaped.
    pid_t pid() const { return m_pid; }

private:
    ChildProcess() = default;

    tl::expected<void, Error> stillWanted(const Patience& patience);
    tl::expected<void, Error> wait(const Patience& patience);
    void hear();
    void sortLine(std::string_view line);

    std::string m_name;
    pid_t m_pid = -1;
    Descriptor m_output, m_words;
    bool m_hasOutput = false;  // something to read, or its end
    LineUse (*m_sort)(std::string_view) = nullptr;
    std::string m_partLine;
    std::deque<std::string> m_lines, m_remembered;
};

inline constexpr std::uint64_t kMostChildMemory_bytes = std::uint64_t{3} << 30;

}  // namespace stillbay
