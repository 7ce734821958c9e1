// SPDX-License-Identifier: MIT
#include "core/clip/child_process.h"

#include "tests/clip/clip_files.h"
#include "tests/commands/output_folder.h"

#include <gtest/gtest.h>

#include <chrono>
#include <fstream>
#include <thread>

namespace stillbay {
namespace {

using Clock = std::chrono::steady_clock;

LineUse takeAll(std::string_view)
{
    return LineUse::Take;
}

double secondsSince(Clock::time_point start)
{
    return std::chrono::duration<double>(Clock::now() - start).count();
}

// Whether a process is there and not merely waiting to be reaped.
bool runs(const std::string& pid)
{
    std::string name, number, state;
    std::ifstream stat("/proc/" + pid + "/stat");
    stat >> number >> name >> state;
    return !state.empty() && state != "Z" && state != "X";
}

std::string firstWord(const std::filesystem::path& file)
{
    std::string word;
    for (int k = 0; k < 200 && word.empty(); ++k) {
        std::ifstream(file) >> word;
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    }
    return word;
}

// Holds what a child gets and gives: its arguments as they are, no input, both outputs in full,
// and how it ends.
TEST(ChildProcess, GetsArgumentsAsTheyAreAndIsReadToItsEnd)
{
    const OutputFolder folder;
    const auto program = makeScript(folder.path("says"),
                                    "printf '%s\\n' \"$@\"\ncat\necho one >&2\n"
                                    "printf two >&2\nexit 3");
    auto child = ChildProcess::start(program, {"$(touch gone) `x`", "; a|b > c", "-y\n*"}, takeAll);
    ASSERT_TRUE(child);
    std::vector<std::uint8_t> text(1000);
    const auto got = child->read(text, patienceOf(10, {}));
    ASSERT_TRUE(got);
    EXPECT_EQ(std::string(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(*got)),
              "$(touch gone) `x`\n; a|b > c\n-y\n*\n");
    const auto ending = child->finish(patienceOf(10, {}));
    ASSERT_TRUE(ending);
    EXPECT_EQ(ending->exitCode, 3);
    EXPECT_EQ(ending->signal, 0);
    const auto one = child->nextLine(patienceOf(10, {}));
    const auto two = child->nextLine(patienceOf(10, {}));
    const auto none = child->nextLine(patienceOf(10, {}));
    ASSERT_TRUE(one && *one && two && *two && none);
    EXPECT_EQ(**one, "one");
    EXPECT_EQ(**two, "two");
    EXPECT_FALSE(*none);
    EXPECT_FALSE(hasChildren());
}

// Holds that the last line counts, ended or not, however soon after it the program ends.
TEST(ChildProcess, IsHeardToItsLastWord)
{
    const OutputFolder folder;
    const auto program = makeScript(folder.path("says"), "printf 'one\\ntwo' >&2");
    std::size_t heard = 0;
    constexpr std::size_t kTimes = 300;
    for (std::size_t k = 0; k < kTimes; ++k) {
        auto child = ChildProcess::start(program, {}, takeAll);
        ASSERT_TRUE(child);
        ASSERT_TRUE(child->finish(patienceOf(10, {})));
        while (const auto line = child->nextLine(patienceOf(10, {})).value())
            heard += *line == "one" || *line == "two" ? 1 : 0;
    }
    EXPECT_EQ(heard, 2 * kTimes);
}

// Holds that a program that is none is an error in words.
TEST(ChildProcess, ThatDoesNotStartIsAnError)
{
    const OutputFolder folder;
    const std::string file = folder.path("text");
    std::ofstream(file) << "echo no program\n";
    EXPECT_NE(complaint(ChildProcess::start(file, {}, takeAll)).find("cannot be started"),
              std::string::npos);
    std::filesystem::permissions(file, std::filesystem::perms::owner_all);
    const auto noHeader = ChildProcess::start(file, {}, takeAll);
    EXPECT_FALSE(noHeader);  // no shell takes it over
    EXPECT_FALSE(hasChildren());
}

// Holds that a silent child, and what it has started, is ended when patience or interest ends, and
// when nobody waits for it any more.
TEST(ChildProcess, LeavesNothingBehind)
{
    const OutputFolder folder;
    for (const std::string how : {"impatient", "stopped", "forgotten"}) {
        const std::string note = folder.path(how.c_str());
        const auto program =
            makeScript(folder.path("hangs"), "sleep 1000 &\necho $! >\"$1\"\nwait");
        std::string grandchild;
        {
            auto child = ChildProcess::start(program, {note}, takeAll);
            ASSERT_TRUE(child);
            grandchild = firstWord(note);
            ASSERT_FALSE(grandchild.empty());
            std::vector<std::uint8_t> byte(1);
            const auto start = Clock::now();
            if (how == "impatient") {
                const auto got = child->read(byte, patienceOf(0.1, {}));
                EXPECT_EQ(complaint(got), "hangs gave no answer for too long and was ended");
            } else if (how == "stopped") {
                std::stop_source source;
                std::jthread later([&] {
                    std::this_thread::sleep_for(std::chrono::milliseconds(50));
                    source.request_stop();
                });
                const auto got = child->read(byte, patienceOf(100, source.get_token()));
                ASSERT_FALSE(got);
                EXPECT_EQ(got.error(), stoppedOnRequest());
            }
            EXPECT_LT(secondsSince(start), 20) << how;
        }
        EXPECT_FALSE(hasChildren()) << how;
        for (int k = 0; k < 500 && runs(grandchild); ++k)
            std::this_thread::sleep_for(std::chrono::milliseconds(10));
        EXPECT_FALSE(runs(grandchild)) << how;
    }
}

// Holds that a flood on either output is bounded: neither fills memory, nor outlasts patience.
TEST(ChildProcess, ThatTalksWithoutEndIsBounded)
{
    const OutputFolder folder;
    auto loud = ChildProcess::start(makeScript(folder.path("loud"), "yes all and more >&2\nexit 1"),
                                    {}, takeAll);
    ASSERT_TRUE(loud);
    std::vector<std::uint8_t> byte(1);
    EXPECT_NE(complaint(loud->read(byte, patienceOf(0.2, {}))).find("too long"), std::string::npos);
    auto wide = ChildProcess::start(
        makeScript(folder.path("wide"), "tr '\\0' x </dev/zero >&2\nexit 1"), {}, takeAll);
    ASSERT_TRUE(wide);
    EXPECT_NE(complaint(wide->nextLine(patienceOf(0.2, {}))).find("too long"), std::string::npos);
    EXPECT_FALSE(hasChildren());
}

// Holds that a child killed from outside is told from one that ended well.
TEST(ChildProcess, ThatIsKilledSaysBySignal)
{
    const OutputFolder folder;
    auto child = ChildProcess::start(makeScript(folder.path("dies"), "kill -9 $$"), {}, takeAll);
    ASSERT_TRUE(child);
    const auto ending = child->finish(patienceOf(10, {}));
    ASSERT_TRUE(ending);
    EXPECT_EQ(ending->signal, 9);
    EXPECT_FALSE(ending->isGood());
}

}  // namespace
}  // namespace stillbay
