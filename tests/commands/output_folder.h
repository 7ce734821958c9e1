// SPDX-License-Identifier: MIT
#pragma once

#include <filesystem>
#include <string>
#include <unistd.h>

namespace stillbay {

// A folder of its own to write into, gone again with it.
class OutputFolder {
public:
    OutputFolder()
        : m_folder(std::filesystem::temp_directory_path() /
                   ("stillbay-output-test-" + std::to_string(::getpid())))
    {
        std::filesystem::create_directory(m_folder);
    }
    ~OutputFolder() { std::filesystem::remove_all(m_folder); }
    OutputFolder(const OutputFolder&) = delete;
    OutputFolder& operator=(const OutputFolder&) = delete;
    std::string path(const char* name = "out.stillbay") const { return (m_folder / name).string(); }
    std::size_t files() const
    {
        return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(m_folder),
                                                      std::filesystem::directory_iterator()));
    }

private:
    std::filesystem::path m_folder;
};

}  // namespace stillbay
