// SPDX-License-Identifier: MIT
#pragma once

/// Makes one call of the system fail that writes to a disk, and counts such calls. Linked into a
/// test it stands before the C library; loaded into a program (LD_PRELOAD) it takes its order from
/// the environment or from the driver.
///
/// Counted are, on files inside of one folder: open() for writing, write(), link(), rename(),
/// unlink(), fsync(), fdatasync(), ftruncate(), with their relatives.
extern "C" {

/// Begins to count anew.
///
/// @param folder  whole path; null or empty: nothing is counted or fails any more
/// @param calls   the letters of those that count (below); null or empty: all but k
/// @param at      which call, from 1; 0: none, it is only counted
/// @param how     the number of an errno; "short": a write takes half, all else works; "kill": the
///                program is killed, in the middle of a write; "act": what stillbayAtDiskCall() was
///                given comes to pass just before the call, which goes on then. A "+" behind it:
///                this call and every one after it.
void stillbayDiskFault(const char* folder, const char* calls, int at, const char* how);

void stillbayAtDiskCall(void (*act)());

/// One letter for each call counted since, at most 255: (o)pen, (w)rite, (l)ink, (r)ename,
/// (u)nlink, (s)ync, (t)runcate. A loc(k) by flock() counts only where its letter is asked for.
const char* stillbayDiskCalls();
}
