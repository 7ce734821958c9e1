// SPDX-License-Identifier: MIT
#include "ui/recordings/flight_notes_pane.h"

#include "ui/charts/over_throttle.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace stillbay::ui {
namespace {

constexpr double kWholeThrottle = 100.0;  // %

QString seenName(Seen seen)
{
    switch (seen) {
        case Seen::Clean:
            return QObject::tr("clean");
        case Seen::Faint:
            return QObject::tr("faint");
        case Seen::Bad:
            return QObject::tr("bad");
    }
    return {};
}

}  // namespace

FlightNotesPane::FlightNotesPane(QWidget* parent)
    : QWidget(parent),
      m_table(new QTableWidget(0, 4)),
      m_from(new NumberBox),
      m_to(new NumberBox),
      m_seen(new QComboBox),
      m_note(new QLineEdit),
      m_add(new QPushButton(tr("Add this note"))),
      m_remove(new QPushButton(tr("Remove the chosen note"))),
      m_problem(new ProblemLabel)
{
    auto* const title = new QLabel(tr("Flight notes"));
    QFont bold = font();
    bold.setBold(true);
    title->setFont(bold);
    m_table->setAccessibleName(tr("Flight notes of this craft"));
    m_table->setHorizontalHeaderLabels({tr("From (%)"), tr("To (%)"), tr("Seen"), tr("Note")});
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setSectionsClickable(false);
    m_table->horizontalHeader()->setStretchLastSection(true);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 12, 12, 12);
    layout->setSpacing(10);
    layout->addWidget(title);
    layout->addWidget(new QuietLabel(
        tr("What you saw in a film at which throttle. The tab Tuning shows the notes over the "
           "computed wobble.")));
    layout->addWidget(makeEntry());
    layout->addWidget(m_problem);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_remove, 0, Qt::AlignLeft);
    auto* const shortcut = new QShortcut(QKeySequence::Delete, m_table);
    shortcut->setContext(Qt::WidgetShortcut);
    connect(shortcut, &QShortcut::activated, m_remove, &QAbstractButton::click);
    connect(m_table, &QTableWidget::currentCellChanged, this,
            [this](int row) { m_remove->setEnabled(row >= 0); });
    connect(m_remove, &QPushButton::clicked, this, [this] {
        const int row = m_table->currentRow();
        if (row < 0)
            return;
        std::vector<FlightNote> notes = m_notes;
        notes.erase(notes.begin() + row);
        emit notesWanted(notes);
    });
    connect(m_add, &QPushButton::clicked, this, [this] {
        std::vector<FlightNote> notes = m_notes;
        FlightNote note;
        note.from = m_from->value() / kWholeThrottle;
        note.to = m_to->value() / kWholeThrottle;
        note.seen = static_cast<Seen>(m_seen->currentIndex());
        note.note = m_note->text().toStdString();
        notes.push_back(std::move(note));
        emit notesWanted(notes);
    });
    setNotes({});
}

QWidget* FlightNotesPane::makeEntry()
{
    m_from->setAccessibleName(tr("Throttle from which it was seen"));
    m_to->setAccessibleName(tr("Throttle up to which it was seen"));
    for (NumberBox* box : {m_from, m_to}) {
        box->setUnit(QStringLiteral("%"));
        box->setRange(0.0, kWholeThrottle);
    }
    m_from->show(30.0);
    m_to->show(40.0);
    m_seen->setAccessibleName(tr("How the film looked"));
    for (const Seen seen : {Seen::Clean, Seen::Faint, Seen::Bad})
        m_seen->addItem(seenName(seen));
    m_note->setAccessibleName(tr("Note on what was seen"));
    m_note->setPlaceholderText(tr("note, if any"));
    m_note->setMaxLength(200);
    for (QPushButton* button : {m_add, m_remove})
        button->setAutoDefault(true);
    auto* const entry = new QWidget;
    auto* const seen = new QHBoxLayout;
    seen->addWidget(new QLabel(tr("Throttle")));
    seen->addWidget(m_from);
    seen->addWidget(new QLabel(tr("to", "between two throttles")));
    seen->addWidget(m_to);
    seen->addWidget(m_seen);
    seen->addStretch(1);
    auto* const note = new QHBoxLayout;
    note->addWidget(m_note, 1);
    note->addWidget(m_add);
    auto* const rows = new QVBoxLayout(entry);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->addLayout(seen);
    rows->addLayout(note);
    return entry;
}

void FlightNotesPane::setNotes(const std::vector<FlightNote>& notes)
{
    m_notes = notes;
    m_table->setRowCount(static_cast<int>(notes.size()));
    for (std::size_t k = 0; k < notes.size(); ++k) {
        const FlightNote& note = notes[k];
        const QString texts[] = {percentText(note.from), percentText(note.to), seenName(note.seen),
                                 QString::fromStdString(note.note)};
        for (int column = 0; column < 4; ++column)
            m_table->setItem(static_cast<int>(k), column, new QTableWidgetItem(texts[column]));
    }
    m_remove->setEnabled(m_table->currentRow() >= 0);
}

}  // namespace stillbay::ui
