// SPDX-License-Identifier: MIT
#include "ui/recordings/recording_list.h"

#include "ui/recordings/recording_words.h"
#include "ui/widgets/colours.h"
#include "ui/widgets/labels.h"

#include <QComboBox>
#include <QDir>
#include <QFileInfo>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QShortcut>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <functional>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr std::array kKinds{RecordingKind::Pluck, RecordingKind::Tap, RecordingKind::Sweep,
                            RecordingKind::Sound, RecordingKind::Film};

// The nearest of those for which it holds.
std::optional<std::size_t> nearestPlace(const std::vector<NamedRecording>& recordings,
                                        std::size_t place,
                                        const std::function<bool(const NamedRecording&)>& holds)
{
    std::optional<std::size_t> nearest;
    const auto off = [place](std::size_t k) {
        return k > place ? k - place : place - k;
    };
    for (std::size_t k = 0; k < recordings.size(); ++k)
        if (holds(recordings[k]) && (!nearest || off(k) < off(*nearest)))
            nearest = k;
    return nearest;
}

// Where one of those before stands now: a file may be named more than once.
std::optional<std::size_t> placeNow(const std::vector<NamedRecording>& before, std::size_t place,
                                    const std::vector<NamedRecording>& now)
{
    const NamedRecording& wanted = before[place];
    const auto isOfFile = [&](const NamedRecording& named) {
        return named.file == wanted.file;
    };
    if (before.size() == now.size() && isOfFile(now[place]))
        return place;
    if (const auto same =
            nearestPlace(now, place, [&](const NamedRecording& named) { return named == wanted; }))
        return same;
    return nearestPlace(now, place, isOfFile);
}

}  // namespace

RecordingList::RecordingList(QWidget* parent)
    : QWidget(parent),
      m_list(new QListWidget),
      m_add(new QPushButton(tr("Add a recording…"))),
      m_remove(new QPushButton(tr("Remove from the list"))),
      m_kindLabel(new QLabel(tr("Taken for:"))),
      m_kind(new QComboBox),
      m_problem(new ProblemLabel)
{
    m_list->setAccessibleName(tr("Recordings of this craft"));
    m_list->setTextElideMode(Qt::ElideMiddle);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setSpacing(1);
    m_add->setToolTip(tr(
        "Names a table of numbers (csv, txt, tsv), a sound (wav, flac, ogg) or a film (mp4, mov, "
        "…) beside the craft; the file stays where it is. It can be dropped onto the window, "
        "too."));
    m_remove->setToolTip(tr("Takes the chosen name off the list; the file stays."));
    for (QPushButton* button : {m_add, m_remove})
        button->setAutoDefault(true);
    m_kind->setAccessibleName(tr("What the recording is taken for"));
    for (const RecordingKind kind : kKinds) {
        m_kind->addItem(kindName(kind));
        m_kind->setItemData(m_kind->count() - 1, kindMeaning(kind), Qt::ToolTipRole);
    }
    m_kindLabel->setBuddy(m_kind);
    auto* const kindRow = new QHBoxLayout;
    kindRow->addWidget(m_kindLabel);
    kindRow->addWidget(m_kind, 1);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(8, 8, 4, 8);
    layout->addWidget(m_list, 1);
    layout->addLayout(kindRow);
    layout->addWidget(m_add);
    layout->addWidget(m_remove);
    layout->addWidget(m_problem);
    auto* const remove = new QShortcut(QKeySequence::Delete, m_list);
    remove->setContext(Qt::WidgetShortcut);
    connect(remove, &QShortcut::activated, m_remove, &QAbstractButton::click);
    connect(m_list, &QListWidget::currentRowChanged, this, [this] {
        showState();
        emit chosenChanged();
    });
    connect(m_add, &QPushButton::clicked, this, &RecordingList::addWanted);
    connect(m_remove, &QPushButton::clicked, this, [this] {
        if (const Chosen now = chosen(); now.what == Chosen::What::Recording)
            emit removeWanted(now.index);
    });
    connect(m_kind, &QComboBox::activated, this, [this](int row) {
        if (const Chosen now = chosen(); now.what == Chosen::What::Recording)
            emit kindWanted(now.index, kKinds[static_cast<std::size_t>(row)]);
    });
    setRecordings({});
}

void RecordingList::setRecordings(const std::vector<NamedRecording>& recordings)
{
    const Chosen before = chosen();
    const std::vector<NamedRecording> present = std::exchange(m_recordings, recordings);
    {
        const QSignalBlocker quiet(m_list);
        m_list->clear();
        for (const NamedRecording& recording : recordings) {
            const QString path = QString::fromStdString(recording.file);
            const bool isMissing = !QFileInfo(path).isFile();
            auto* const item = new QListWidgetItem(
                isMissing ? tr("%1\nmissing").arg(QFileInfo(path).fileName())
                          : tr("%1\n%2", "file and what it is taken for")
                                .arg(QFileInfo(path).fileName(), recordingUse(recording)));
            item->setToolTip(
                isMissing ? tr("There is no such file: %1").arg(QDir::toNativeSeparators(path))
                          : QDir::toNativeSeparators(path));
            if (isMissing)
                item->setForeground(problemColour(palette()));
            m_list->addItem(item);
        }
        auto* const hang = new QListWidgetItem(tr("Hang test\nneeds no recording"));
        hang->setToolTip(tr("Young's modulus of the tube from masses hung on a piece of it."));
        m_list->addItem(hang);
        auto* const notes = new QListWidgetItem(tr("Flight notes\nneed no recording"));
        notes->setToolTip(tr("What was seen in films at which throttle."));
        m_list->addItem(notes);
        Chosen now = before;
        if (before.what == Chosen::What::Recording) {
            const auto place = placeNow(present, before.index, recordings);
            now = place ? Chosen{Chosen::What::Recording, *place} : Chosen{};
        }
        if (now.what == Chosen::What::Nothing && !recordings.empty())
            now = {Chosen::What::Recording, std::min(before.index, recordings.size() - 1)};
        m_list->setCurrentRow(rowOf(now));
    }
    showState();
}

int RecordingList::rowOf(const Chosen& chosen) const
{
    const int recordings = static_cast<int>(m_recordings.size());
    switch (chosen.what) {
        case Chosen::What::Nothing:
            break;
        case Chosen::What::Recording:
            return static_cast<int>(chosen.index);
        case Chosen::What::HangTest:
            return recordings;
        case Chosen::What::FlightNotes:
            return recordings + 1;
    }
    return -1;
}

void RecordingList::choose(const Chosen& wanted)
{
    m_list->setCurrentRow(rowOf(wanted));
}

Chosen RecordingList::chosen() const
{
    const int row = m_list->currentRow();
    if (row < 0)
        return {};
    const auto place = static_cast<std::size_t>(row);
    if (place < m_recordings.size())
        return {Chosen::What::Recording, place};
    return {place == m_recordings.size() ? Chosen::What::HangTest : Chosen::What::FlightNotes, 0};
}

void RecordingList::showState()
{
    const Chosen now = chosen();
    const bool isRecording = now.what == Chosen::What::Recording;
    m_remove->setEnabled(isRecording);
    m_kind->setEnabled(isRecording);
    m_kindLabel->setEnabled(isRecording);
    if (isRecording) {
        m_kind->setCurrentIndex(static_cast<int>(m_recordings[now.index].kind));
        m_kind->setToolTip(kindMeaning(m_recordings[now.index].kind));
    }
}

}  // namespace stillbay::ui
