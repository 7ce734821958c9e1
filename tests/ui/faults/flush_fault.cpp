// SPDX-License-Identifier: MIT
// Loaded into a program before the C library (LD_PRELOAD): every flush to the disk fails, as on a
// full network disk or a failing one. STILLBAY_FLUSH_FAULT says with which number of errno.

#include <cerrno>
#include <cstdlib>

namespace {

int fault()
{
    const char* const number = std::getenv("STILLBAY_FLUSH_FAULT");
    errno = number ? std::atoi(number) : EIO;
    return -1;
}

}  // namespace

extern "C" int fdatasync(int /*descriptor*/)
{
    return fault();
}

extern "C" int fsync(int /*descriptor*/)
{
    return fault();
}
