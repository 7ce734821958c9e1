// SPDX-License-Identifier: MIT
#include "tests/fuzz/mutate.h"

#include <algorithm>
#include <array>
#include <csignal>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <unistd.h>
#include <vector>

// NOLINTNEXTLINE(readability-identifier-naming)
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

// A sanitizer's finding ends the program as any other, so that its input is kept.
// NOLINTNEXTLINE(bugprone-reserved-identifier, readability-identifier-naming)
extern "C" const char* __asan_default_options()
{
    return "abort_on_error=1:handle_segv=2";
}
// NOLINTNEXTLINE(bugprone-reserved-identifier, readability-identifier-naming)
extern "C" const char* __ubsan_default_options()
{
    return "abort_on_error=1:print_stacktrace=1";
}

namespace {

constexpr unsigned kLongest_s = 110;  // of an input: longer counts as hanging

// What is being tried, for the handler below.
std::string g_name, g_input, g_kept;

void say(const char* text)
{
    (void)!::write(STDERR_FILENO, text, std::strlen(text));
}

// Keeps the input that ends the program. Nothing here allocates.
void keepInput(int signal)
{
    say("\nthis input ended it: ");
    say(g_name.c_str());
    const int file = ::open(g_kept.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
    if (file >= 0 &&
        ::write(file, g_input.data(), g_input.size()) == static_cast<ssize_t>(g_input.size())) {
        say("\nkept as ");
        say(g_kept.c_str());
    }
    say("\n");
    std::signal(signal, SIG_DFL);
    std::raise(signal);
}

void watch()
{
    static std::array<char, std::size_t{1} << 16> other;  // where the stack has run over
    stack_t stack = {};
    stack.ss_sp = other.data();
    stack.ss_size = other.size();
    ::sigaltstack(&stack, nullptr);
    struct sigaction action = {};
    action.sa_handler = keepInput;
    action.sa_flags = SA_ONSTACK;
    for (const int signal : {SIGABRT, SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGALRM})
        ::sigaction(signal, &action, nullptr);
}

void tryInput(std::string name, std::string bytes)
{
    g_name = std::move(name);
    g_input = std::move(bytes);
    ::alarm(kLongest_s);
    // Of its own size, so that a sanitizer sees a byte read behind it.
    const std::vector<std::uint8_t> data(g_input.begin(), g_input.end());
    LLVMFuzzerTestOneInput(data.data(), data.size());
    ::alarm(0);
}

std::string contentOf(const std::filesystem::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<std::filesystem::path> filesIn(const std::filesystem::path& place)
{
    std::vector<std::filesystem::path> files;
    if (!std::filesystem::is_directory(place))
        return {place};
    for (const auto& entry : std::filesystem::directory_iterator(place))
        files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    return files;
}

}  // namespace

/// Feeds a file, or every file of a folder, to a fuzz target, in any compiler's build, then so many
/// inputs that are made of them: TARGET_replay FILE|FOLDER [COUNT [FIRST]]. What ends the program
/// is named and kept in the working folder.
int main(int count, char** arguments)
{
    if (count < 2)
        return 2;
    const std::string program = std::filesystem::path(arguments[0]).filename().string();
    g_kept = (std::filesystem::current_path() / (program + ".crash")).string();
    watch();

    // All of them first: a target may go to a folder of its own.
    std::vector<std::string> inputs;
    const std::vector<std::filesystem::path> files = filesIn(arguments[1]);
    for (const std::filesystem::path& path : files)
        inputs.push_back(contentOf(path));
    for (std::size_t k = 0; k < files.size(); ++k)
        tryInput(files[k].string(), inputs[k]);
    if (inputs.empty())
        return 1;
    const std::uint64_t mutants = count > 2 ? std::strtoull(arguments[2], nullptr, 10) : 0;
    const std::uint64_t first = count > 3 ? std::strtoull(arguments[3], nullptr, 10) : 0;
    for (std::uint64_t k = 0; k < mutants; ++k)
        tryInput("mutant " + std::to_string(first + k), mutant(inputs, first + k));
    std::cout << inputs.size() << " files and " << mutants << " mutants tried\n";
    return 0;
}
