// SPDX-License-Identifier: MIT
#pragma once

#include "ui/document/background.h"
#include "ui/recordings/finding.h"
#include "ui/recordings/measured_craft.h"
#include "ui/recordings/reading.h"

#include <QObject>

#include <cstddef>
#include <memory>
#include <optional>
#include <vector>

namespace stillbay::ui {

class RecordingPage;

/// Reads the recording that is shown, if it is no film, and finds what it says.
class RecordingDesk final : public QObject {
    Q_OBJECT
public:
    explicit RecordingDesk(RecordingPage& page, QObject* parent = nullptr);

    /// As its craft is now.
    ///
    /// @param place  of the recording among the craft's
    void show(std::size_t place, const PredictedCraft& craft);
    void leave();   ///< no recording is shown
    void forget();  ///< likewise, nor which reading the builder has stopped
    /// By hand, of the pluck that is shown: which of the bay's six each mode found is.
    void match(const std::vector<std::optional<std::size_t>>& matching);
    bool isBusy() const { return m_read.isDue() || m_find.isDue(); }

signals:
    void said(const stillbay::ui::Finding& finding);
    void saysNothing(const stillbay::Error& error);  ///< it was read, but shows nothing
    void failed(const stillbay::Error& error);       ///< it cannot be read
    void stopped();                                  ///< by the builder, before it said anything
    void staleChanged(bool isStale);                 ///< what was said is being worked out anew

private:
    /// What the finding depends on.
    struct FindKey {
        ReadKey read;
        NamedRecording named;
        std::optional<NamedRecording> partner;
        Setup craft;
        bool isPredicted = false;
        std::vector<std::optional<std::size_t>> matching;
        bool operator==(const FindKey&) const = default;
    };

    std::optional<NamedRecording> partnerOf(const NamedRecording& sweep) const;
    void showNamed();
    void showOther(const ReadKey& key);
    void read(const ReadKey& key);
    void readArrived(const Result<ReadAnswer>& answer);
    void ask();
    void tellStale(bool isStale);
    void findingArrived(const Result<Finding>& finding);

    RecordingPage& m_page;
    std::optional<NamedRecording> m_named;
    PredictedCraft m_craft;
    std::vector<std::optional<std::size_t>> m_matching;  // by hand …
    NamedRecording m_matched;                            // … of this
    std::optional<ReadKey> m_stopped;                    // the builder has stopped this reading
    std::optional<ReadKey> m_shown;                      // on the page
    std::shared_ptr<const Recording> m_recording;        // of m_shown
    Background<ReadKey, ReadAnswer> m_read;              // last: they are gone before what they
    Background<FindKey, Finding> m_find;                 // report to
};

}  // namespace stillbay::ui
