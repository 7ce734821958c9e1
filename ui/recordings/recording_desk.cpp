// SPDX-License-Identifier: MIT
#include "ui/recordings/recording_desk.h"

#include "ui/recordings/recording_page.h"
#include "ui/recordings/result_part.h"

#include <chrono>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kDragPause(250);  // lets a drag end before work begins

}  // namespace

RecordingDesk::RecordingDesk(RecordingPage& page, QObject* parent)
    : QObject(parent),
      m_page(page),
      m_read({.done = [this](const Result<ReadAnswer>& answer) { readArrived(answer); },
              .interim = [this](const ReadAnswer& answer) { m_page.showAnswer(answer); },
              .advanced =
                  [this](int step, int steps) {
                      m_page.advance(step, steps);
                  }}),
      m_find({.done =
                  [this](const Result<Finding>& finding) {
                      findingArrived(finding);
                  }},
             kDragPause)
{
    connect(&m_page, &RecordingPage::stopWanted, this, [this] {
        m_stopped = m_read.wanted();
        m_read.drop();
        m_page.showStopped();
        emit stopped();
    });
    connect(&m_page, &RecordingPage::readWanted, this, [this] {
        m_stopped.reset();
        showNamed();
    });
}

void RecordingDesk::show(std::size_t place, const PredictedCraft& craft)
{
    m_named = craft.setup.recordings.at(place);
    m_craft = craft;
    showNamed();
}

void RecordingDesk::leave()
{
    m_read.drop();
    m_find.drop();
    m_named.reset();
    m_shown.reset();
    m_recording.reset();
}

void RecordingDesk::forget()
{
    leave();
    m_stopped.reset();
}

void RecordingDesk::match(const std::vector<std::optional<std::size_t>>& matching)
{
    m_matching = matching;
    if (m_named)
        m_matched = *m_named;
    ask();
}

// A sweep has one where the craft has exactly two.
std::optional<NamedRecording> RecordingDesk::partnerOf(const NamedRecording& sweep) const
{
    std::vector<NamedRecording> others;
    for (const NamedRecording& other : m_craft.setup.recordings)
        if (other.kind == RecordingKind::Sweep && other.file != sweep.file)
            others.push_back(other);
    if (sweep.kind != RecordingKind::Sweep || others.size() != 1)
        return {};
    return others.front();
}

void RecordingDesk::showNamed()
{
    if (!m_named)
        return;
    const ReadKey key = readKeyOf(*m_named);
    if (m_shown != key)
        showOther(key);
    m_page.setNamed(*m_named, m_craft.setup.airframe.arms);
    if (key.size < 0)
        return;
    if (!m_recording && !m_read.wanted())
        read(key);
    ask();
}

// Another file, another version of it, or read in another way.
void RecordingDesk::showOther(const ReadKey& key)
{
    if (!m_shown || m_shown->path != key.path || key.size < 0)
        m_page.showNothing();
    m_shown = key;
    m_recording.reset();
    m_matching.clear();
    m_read.drop();
    m_find.drop();
}

void RecordingDesk::read(const ReadKey& key)
{
    if (m_stopped == key) {
        m_page.showStopped();
        return emit stopped();
    }
    m_page.showReading();
    m_read.want(key, [named = *m_named](const Caller<ReadAnswer>& caller) {
        return readNamed(named, caller);
    });
}

void RecordingDesk::readArrived(const Result<ReadAnswer>& answer)
{
    if (!answer) {
        m_page.showNothing();
        return emit failed(answer.error());
    }
    m_page.showAnswer(*answer);
    if (answer->failure)
        return emit failed(*answer->failure);
    m_recording = answer->recording;
    m_page.setNamed(*m_named, m_craft.setup.airframe.arms);
    ask();
}

// While nobody looks it waits.
void RecordingDesk::ask()
{
    if (!m_named || !m_recording || !m_shown || !m_page.isVisible())
        return;
    if (!m_craft.isCurrent)  // its prediction is on the way
        return tellStale(true);
    if (m_matched != *m_named)  // other modes may be found
        m_matching.clear();
    FindKey key{*m_shown,
                *m_named,
                partnerOf(*m_named),
                measuredCraft(m_craft.setup),
                m_craft.prediction != nullptr,
                m_matching};
    if (m_find.wanted() == key)
        return tellStale(m_find.isDue());
    tellStale(true);
    const FindingQuestion question{m_craft.setup, m_craft.prediction, *m_named,
                                   m_recording,   key.partner,        m_matching};
    m_find.want(std::move(key), [question](const Caller<Finding>& caller) {
        return findingOf(question, caller.stop);
    });
}

void RecordingDesk::tellStale(bool isStale)
{
    m_page.result().setStale(isStale);
    emit staleChanged(isStale);
}

void RecordingDesk::findingArrived(const Result<Finding>& finding)
{
    m_page.result().setStale(false);
    if (!finding) {
        m_page.result().setCharts({});
        m_matching.clear();
        return emit saysNothing(finding.error());
    }
    m_page.result().setCharts(finding->charts);
    emit said(*finding);
}

}  // namespace stillbay::ui
