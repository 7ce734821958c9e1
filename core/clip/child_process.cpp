// SPDX-License-Identifier: MIT
#include "core/clip/child_process.h"

#include "core/base/progress.h"

#include <array>
#include <cerrno>
#include <csignal>
#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <system_error>
#include <thread>
#include <unistd.h>
#include <utility>

extern char** environ;

namespace stillbay {
namespace {

constexpr int kSlice_ms = 20;  // between two looks at the stop token
constexpr int kPipe_bytes = 1 << 20;
constexpr unsigned kLongestLine = 4096;
constexpr unsigned kMostRemembered = 16;
constexpr int kMostPieces = 64;          // heard at once, however much a child says
constexpr unsigned kMostWaiting = 4096;  // that wait to be taken

tl::unexpected<Error> cannotStart(const std::string& name, int code)
{
    return fail(Errc::BadInput,
                phrase("%1 cannot be started: %2", name, std::generic_category().message(code)));
}

tl::unexpected<Error> tooSilent(const std::string& name)
{
    return fail(Errc::BadInput, phrase("%1 gave no answer for too long and was ended", name));
}

struct Pipe {
    Descriptor from, to;
};

// Above the three standard ones, whichever of those are closed here.
Descriptor liftedAboveStandard(int number)
{
    if (number < 0 || number > STDERR_FILENO)
        return Descriptor(number);
    const Descriptor low(number);
    return Descriptor(::fcntl(number, F_DUPFD_CLOEXEC, STDERR_FILENO + 1));
}

Pipe makePipe()
{
    std::array<int, 2> ends{-1, -1};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0)
        return {};
    Pipe pipe{liftedAboveStandard(ends[0]), liftedAboveStandard(ends[1])};
    if (pipe.from.isOpen())
        ::fcntl(pipe.from.number(), F_SETFL, O_NONBLOCK);
    return pipe;
}

// As ours, but for what makes the decoder write files of its own or speak another language.
std::vector<std::string> childEnvironment()
{
    std::vector<std::string> entries;
    for (char** entry = environ; entry != nullptr && *entry != nullptr; ++entry) {
        const std::string_view text(*entry);
        const std::string_view name = text.substr(0, text.find('='));
        if (name != "FFREPORT" && name != "AV_LOG_FORCE_COLOR" && name != "LC_ALL")
            entries.emplace_back(text);
    }
    entries.emplace_back("AV_LOG_FORCE_NOCOLOR=1");
    entries.emplace_back("LC_ALL=C");
    return entries;
}

std::vector<char*> pointersTo(std::vector<std::string>& texts)
{
    std::vector<char*> pointers;
    for (std::string& text : texts)
        pointers.push_back(text.data());
    pointers.push_back(nullptr);
    return pointers;
}

// The system's two lists of wishes for a new process.
class SpawnWishes final {
public:
    SpawnWishes()
    {
        ::posix_spawn_file_actions_init(&m_files);
        ::posix_spawnattr_init(&m_attributes);
    }
    ~SpawnWishes()
    {
        ::posix_spawn_file_actions_destroy(&m_files);
        ::posix_spawnattr_destroy(&m_attributes);
    }
    SpawnWishes(const SpawnWishes&) = delete;
    SpawnWishes& operator=(const SpawnWishes&) = delete;

    void connect(int output, int words)
    {
        ::posix_spawn_file_actions_addopen(&m_files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
        ::posix_spawn_file_actions_adddup2(&m_files, output, STDOUT_FILENO);
        ::posix_spawn_file_actions_adddup2(&m_files, words, STDERR_FILENO);
    }
    void ownGroupAndSignals()
    {
        sigset_t all, none;
        ::sigfillset(&all);
        ::sigemptyset(&none);
        ::posix_spawnattr_setpgroup(&m_attributes, 0);
        ::posix_spawnattr_setsigdefault(&m_attributes, &all);
        ::posix_spawnattr_setsigmask(&m_attributes, &none);
        ::posix_spawnattr_setflags(
            &m_attributes, POSIX_SPAWN_SETPGROUP | POSIX_SPAWN_SETSIGDEF | POSIX_SPAWN_SETSIGMASK);
    }
    const posix_spawn_file_actions_t* files() const { return &m_files; }
    const posix_spawnattr_t* attributes() const { return &m_attributes; }

private:
    posix_spawn_file_actions_t m_files;
    posix_spawnattr_t m_attributes;
};

void limitMemory([[maybe_unused]] pid_t pid)
{
#ifdef __linux__
    const rlimit limit{kMostChildMemory_bytes, kMostChildMemory_bytes};
    ::prlimit(pid, RLIMIT_DATA, &limit, nullptr);
#endif
}

// Into the pipe's reader whatever is there; −1: nothing now, 0: it has ended.
ssize_t readSome(int descriptor, void* into, std::size_t size)
{
    ssize_t got = -1;
    do
        got = ::read(descriptor, into, size);
    while (got < 0 && errno == EINTR);
    if (got < 0 && errno != EAGAIN && errno != EWOULDBLOCK)
        return 0;
    return got;
}

}  // namespace

Patience patienceOf(double seconds, std::stop_token stop)
{
    const auto span = std::chrono::duration_cast<std::chrono::steady_clock::duration>(
        std::chrono::duration<double>(seconds));
    return {std::chrono::steady_clock::now() + span, std::move(stop)};
}

Result<ChildProcess> ChildProcess::start(const std::filesystem::path& program,
                                         const std::vector<std::string>& arguments,
                                         LineUse (*sort)(std::string_view line))
{
    ChildProcess child;
    child.m_name = program.filename().string();
    child.m_sort = sort;
    Pipe output = makePipe(), words = makePipe();
    if (!output.to.isOpen() || !words.to.isOpen())
        return cannotStart(child.m_name, errno);
#ifdef F_SETPIPE_SZ
    ::fcntl(output.to.number(), F_SETPIPE_SZ, kPipe_bytes);  // fewer turns; not vital
#endif

    std::vector<std::string> all{program.string()};
    all.insert(all.end(), arguments.begin(), arguments.end());
    std::vector<std::string> environment = childEnvironment();
    SpawnWishes wishes;
    wishes.connect(output.to.number(), words.to.number());
    wishes.ownGroupAndSignals();
    const int code =
        ::posix_spawn(&child.m_pid, program.c_str(), wishes.files(), wishes.attributes(),
                      pointersTo(all).data(), pointersTo(environment).data());
    if (code != 0) {
        child.m_pid = -1;
        return cannotStart(child.m_name, code);
    }
    limitMemory(child.m_pid);
    child.m_output = std::move(output.from);
    child.m_words = std::move(words.from);
    return child;
}

ChildProcess::ChildProcess(ChildProcess&& other) noexcept
{
    *this = std::move(other);
}

ChildProcess& ChildProcess::operator=(ChildProcess&& other) noexcept
{
    std::swap(m_name, other.m_name);
    std::swap(m_pid, other.m_pid);
    std::swap(m_output, other.m_output);
    std::swap(m_words, other.m_words);
    std::swap(m_hasOutput, other.m_hasOutput);
    std::swap(m_sort, other.m_sort);
    std::swap(m_partLine, other.m_partLine);
    std::swap(m_lines, other.m_lines);
    std::swap(m_remembered, other.m_remembered);
    return *this;
}

ChildProcess::~ChildProcess()
{
    end();
}

void ChildProcess::end() noexcept
{
    m_output.close();
    m_words.close();
    if (m_pid <= 0)
        return;
    ::kill(-m_pid, SIGKILL);  // before it is reaped, so that its number is still its own
    while (::waitpid(m_pid, nullptr, 0) < 0 && errno == EINTR)
        ;
    m_pid = -1;
}

void ChildProcess::sortLine(std::string_view line)
{
    if (line.empty())
        return;
    switch (m_sort(line)) {
        case LineUse::Take:
            if (m_lines.size() < kMostWaiting)
                m_lines.emplace_back(line);
            break;
        case LineUse::Remember:
            m_remembered.emplace_back(line);
            if (m_remembered.size() > kMostRemembered)
                m_remembered.pop_front();
            break;
        case LineUse::Ignore:
            break;
    }
}

// Takes in what its standard error holds now.
void ChildProcess::hear()
{
    std::array<char, 4096> piece;
    for (int k = 0; k < kMostPieces && m_words.isOpen(); ++k) {
        const ssize_t got = readSome(m_words.number(), piece.data(), piece.size());
        if (got < 0)
            return;
        if (got == 0) {
            m_words.close();
            sortLine(std::exchange(m_partLine, {}));
            return;
        }
        for (const char letter : std::string_view(piece.data(), static_cast<std::size_t>(got)))
            if (letter == '\n' || letter == '\r')
                sortLine(std::exchange(m_partLine, {}));
            else if (m_partLine.size() < kLongestLine)
                m_partLine += letter;
        if (static_cast<std::size_t>(got) < piece.size())
            return;
    }
}

tl::expected<void, Error> ChildProcess::stillWanted(const Patience& patience)
{
    if (patience.stop.stop_requested()) {
        end();
        return tl::unexpected(stoppedOnRequest());
    }
    if (std::chrono::steady_clock::now() >= patience.until) {
        end();
        return tooSilent(m_name);
    }
    return {};
}

// Until something comes, at most one slice; then all that it says has been heard.
tl::expected<void, Error> ChildProcess::wait(const Patience& patience)
{
    if (auto wanted = stillWanted(patience); !wanted)
        return wanted;
    std::array<pollfd, 2> both{pollfd{m_words.number(), POLLIN, 0},
                               pollfd{m_hasOutput ? -1 : m_output.number(), POLLIN, 0}};
    ::poll(both.data(), both.size(), kSlice_ms);
    if (both[1].revents != 0)
        m_hasOutput = true;
    hear();  // also what was written just before that output
    return {};
}

Result<std::size_t> ChildProcess::read(std::span<std::uint8_t> into, const Patience& patience)
{
    std::size_t done = 0;
    while (done < into.size() && m_output.isOpen()) {
        const ssize_t got = readSome(m_output.number(), into.data() + done, into.size() - done);
        if (got == 0) {
            m_output.close();
        } else if (got > 0) {
            done += static_cast<std::size_t>(got);
        }
        m_hasOutput = false;
        if (got > 0 && !patience.stop.stop_requested())
            continue;
        if (got != 0)
            if (const auto waited = wait(patience); !waited)
                return tl::unexpected(waited.error());
    }
    return done;
}

Result<std::optional<std::string>> ChildProcess::nextLine(const Patience& patience)
{
    while (m_lines.empty() && m_words.isOpen()) {
        const bool hadOutput = m_hasOutput;
        if (const auto waited = wait(patience); !waited)
            return tl::unexpected(waited.error());
        if (hadOutput && m_lines.empty() && m_output.isOpen())
            break;
    }
    if (m_lines.empty())
        return std::optional<std::string>();
    std::optional<std::string> line = std::move(m_lines.front());
    m_lines.pop_front();
    return line;
}

Result<Ending> ChildProcess::finish(const Patience& patience)
{
    m_output.close();
    for (;;) {
        siginfo_t what = {};
        if (m_pid <= 0 ||
            ::waitid(P_PID, static_cast<id_t>(m_pid), &what, WEXITED | WNOHANG | WNOWAIT) != 0) {
            end();
            return Ending{};  // somebody else has reaped it
        }
        if (what.si_pid == m_pid) {
            hear();
            sortLine(std::exchange(m_partLine, {}));  // nobody is left who would end it
            const bool hasExited = what.si_code == CLD_EXITED;
            const Ending ending{hasExited ? what.si_status : 0, hasExited ? 0 : what.si_status};
            end();
            return ending;
        }
        const bool isAboutToEnd = !m_words.isOpen();
        if (const auto waited = isAboutToEnd ? stillWanted(patience) : wait(patience); !waited)
            return tl::unexpected(waited.error());
        if (isAboutToEnd)
            std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
}

}  // namespace stillbay
