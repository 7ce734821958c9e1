// SPDX-License-Identifier: MIT
#pragma once

#include <map>
#include <string>
#include <vector>

/// All of a file's bytes; empty where it cannot be read.
std::string contentOfFile(const std::string& path);

/// A folder of its own among the temporary ones, with the same few files in it for each input. It
/// is removed at the program's end.
class FuzzFolder {
public:
    /// @param files  contents by name
    explicit FuzzFolder(std::map<std::string, std::string> files);
    ~FuzzFolder();
    FuzzFolder(const FuzzFolder&) = delete;
    FuzzFolder& operator=(const FuzzFolder&) = delete;

    const std::string& path() const { return m_path; }

    /// Makes it the working folder, an empty file the standard input, and leaves no program to be
    /// found.
    void enter();

    /// Names of the files that are new or were replaced.
    std::vector<std::string> changed() const;

    /// As it was in the beginning.
    void restore();

private:
    std::map<std::string, std::string> m_files;
    std::string m_path;
    bool m_isEntered = false;
};
