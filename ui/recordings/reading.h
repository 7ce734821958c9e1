// SPDX-License-Identifier: MIT
#pragma once

#include "core/base/result.h"
#include "core/recording/read_plan.h"
#include "core/recording/recording.h"
#include "core/setup/setup.h"
#include "ui/charts/envelope.h"
#include "ui/document/background.h"

#include <QString>

#include <memory>
#include <optional>
#include <vector>

namespace stillbay::ui {

/// What a reading depends on: the file's version and what the builder changed.
struct ReadKey {
    QString path;
    qint64 size = -1;  ///< [bytes]; -1: there is no such file
    qint64 modified_ms = 0;
    std::optional<double> rate_hz;
    std::vector<ReadColumn> columns;

    bool operator==(const ReadKey&) const = default;
};

/// As the file is now.
ReadKey readKeyOf(const NamedRecording& recording);

/// A recording and how it was read. At first only the plan is known; where reading by it fails, it
/// is still there to be changed.
struct ReadAnswer {
    ReadPlan guessed, plan;
    std::shared_ptr<const Recording> recording;  ///< null: not yet, or see failure
    std::vector<Envelope> envelopes;             ///< a channel each
    std::optional<Error> failure;
};

/// To be run in the background.
Result<ReadAnswer> readNamed(const NamedRecording& recording, const Caller<ReadAnswer>& caller);

}  // namespace stillbay::ui
