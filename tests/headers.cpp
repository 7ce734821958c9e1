// SPDX-License-Identifier: MIT
// Nothing here: this file only gives the precompiled headers of the tests a target to live in.
