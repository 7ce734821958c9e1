// SPDX-License-Identifier: MIT
#include "tests/fuzz/fuzz_folder.h"

#include "tests/fuzz/demand.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <unistd.h>
#include <utility>

namespace {

// Where TMPDIR says, else in memory where the system has such a folder: what is written whole waits
// for the disk.
std::filesystem::path whereFoldersGo()
{
    const std::filesystem::path memory = "/dev/shm";
    const bool isInMemory = std::getenv("TMPDIR") == nullptr && ::access(memory.c_str(), W_OK) == 0;
    return isInMemory ? memory : std::filesystem::temp_directory_path();
}

void write(const std::filesystem::path& file, const std::string& bytes)
{
    std::ofstream(file, std::ios::binary) << bytes;
}

}  // namespace

std::string contentOfFile(const std::string& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

FuzzFolder::FuzzFolder(std::map<std::string, std::string> files)
    : m_files(std::move(files)), m_path((whereFoldersGo() / "stillbay_fuzz_XXXXXX").string())
{
    demand(::mkdtemp(m_path.data()) != nullptr, "a folder can be made");
    restore();
}

FuzzFolder::~FuzzFolder()
{
    std::error_code code;
    std::filesystem::remove_all(m_path, code);
}

void FuzzFolder::enter()
{
    if (std::exchange(m_isEntered, true))
        return;
    demand(::chdir(m_path.c_str()) == 0, "the folder can be entered");
    demand(std::freopen("/dev/null", "r", stdin) != nullptr, "an empty standard input");
    ::setenv("PATH", "/nowhere", 1);
}

std::vector<std::string> FuzzFolder::changed() const
{
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(m_path)) {
        const std::string name = entry.path().filename().string();
        const auto known = m_files.find(name);
        if (known == m_files.end() || known->second != contentOfFile(entry.path().string()))
            names.push_back(name);
    }
    return names;
}

void FuzzFolder::restore()
{
    for (const std::string& name : changed())
        std::filesystem::remove_all(std::filesystem::path(m_path) / name);
    for (const auto& [name, bytes] : m_files)
        if (const auto file = std::filesystem::path(m_path) / name; !std::filesystem::exists(file))
            write(file, bytes);
}
