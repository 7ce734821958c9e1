// SPDX-License-Identifier: MIT
#pragma once

#include "core/setup/setup.h"

#include <QString>

/// The craft's file names its recordings as seen from its own folder; the craft at hand has their
/// whole paths, so that saving it elsewhere does not lose them.
namespace stillbay::ui {

/// @param craftPath  of the craft's file; empty: it has none, and nothing changes
Setup withWholePaths(Setup setup, const QString& craftPath);
Setup withPathsSeenFrom(Setup setup, const QString& craftPath);

}  // namespace stillbay::ui
