// SPDX-License-Identifier: MIT
#pragma once

#include <string>

namespace stillbay::ui {

/// A file that says that somebody is at work, for as long as the program that took it runs: what
/// counts is the system's lock on it, not that it is there nor what is in it. (Qt's own kind counts
/// by content. One that was killed, or had no room, between making the file and writing into it
/// holds the lock forever.) Both kinds heed each other.
class FileLock final {
public:
    explicit FileLock(std::string path) : m_path(std::move(path)) {}
    ~FileLock() { release(); }
    FileLock(const FileLock&) = delete;
    FileLock& operator=(const FileLock&) = delete;

    enum class Taken { Yes, ByAnother, NoPlace, NoLocks };
    /// NoPlace: the file cannot be made, for want of room or rights. NoLocks: it is there, but the
    /// file system locks nothing, so that nobody knows whether somebody has it.
    Taken take();
    void release();  ///< the file goes
    bool isTaken() const { return m_descriptor >= 0; }

private:
    std::string m_path;
    int m_descriptor = -1;
};

}  // namespace stillbay::ui
