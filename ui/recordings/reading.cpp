// SPDX-License-Identifier: MIT
#include "ui/recordings/reading.h"

#include "core/calibrate/named_reading.h"
#include "core/recording/read_recording.h"

#include <QFileInfo>

#include <cmath>
#include <filesystem>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::size_t kProgressSteps = 200;  // bytes of a large file are more than a bar can count

// Steps of a bar instead of bytes.
Progress inSteps(const Progress& progress)
{
    return [&progress, last = std::size_t{0}](std::size_t done, std::size_t total) mutable {
        const std::size_t step =
            total == 0 ? 0
                       : static_cast<std::size_t>(static_cast<double>(done) /
                                                  static_cast<double>(total) * kProgressSteps);
        if (step != last)
            progress(step, kProgressSteps);
        last = step;
    };
}

}  // namespace

ReadKey readKeyOf(const NamedRecording& recording)
{
    const QFileInfo file(QString::fromStdString(recording.file));
    const bool isThere = file.isFile();
    return {file.filePath(), isThere ? file.size() : -1,
            isThere ? file.lastModified().toMSecsSinceEpoch() : 0, recording.rate_hz,
            recording.columns};
}

Result<ReadAnswer> readNamed(const NamedRecording& named, const Caller<ReadAnswer>& caller)
{
    const std::filesystem::path file(named.file);
    const Result<ReadPlan> guessed = planReading(file);
    if (!guessed)
        return tl::unexpected<Error>(guessed.error());
    ReadAnswer answer;
    answer.guessed = *guessed;
    answer.plan = followed(*guessed, named);
    caller.interim(answer);
    Result<Recording> recording =
        readRecording(file, answer.plan, caller.stop, inSteps(caller.progress));
    if (!recording) {
        answer.failure = recording.error();
        return answer;
    }
    const auto shared = std::make_shared<const Recording>(*std::move(recording));
    for (const Channel& channel : shared->channels) {
        if (caller.stop.stop_requested())
            return tl::unexpected(stoppedOnRequest());
        answer.envelopes.emplace_back(
            std::shared_ptr<const std::vector<double>>(shared, &channel.values));
    }
    answer.recording = shared;
    return answer;
}

}  // namespace stillbay::ui
