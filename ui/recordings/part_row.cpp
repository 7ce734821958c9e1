// SPDX-License-Identifier: MIT
#include "ui/recordings/part_row.h"

#include "ui/widgets/number_box.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>

namespace stillbay::ui {

PartRow::PartRow(OfWhat what, QWidget* parent)
    : QWidget(parent),
      m_from(new NumberBox),
      m_to(new NumberBox),
      m_whole(new QPushButton(tr("All of it")))
{
    const bool isFilm = what == OfWhat::Film;
    m_from->setAccessibleName(isFilm ? tr("Beginning of the film's part")
                                     : tr("Beginning of the part"));
    m_to->setAccessibleName(isFilm ? tr("End of the film's part") : tr("End of the part"));
    for (NumberBox* box : {m_from, m_to}) {
        box->setUnit(QStringLiteral("s"));
        box->setToolTip(isFilm
                            ? tr("In seconds since the film's first frame. At most a minute of a "
                                 "film is read at once.")
                            : tr("In seconds since the beginning of the recording. In the trace "
                                 "a part is drawn with the left button, or moved by its ends; a "
                                 "double click takes all."));
        connect(box, &NumberBox::valueChanged, this, [this] {
            if (m_end_s > 0.0)
                want(m_from->value(), m_to->value());
        });
    }
    m_whole->setAccessibleName(isFilm ? tr("Use all of the film") : tr("Use all of the recording"));
    m_whole->setToolTip(isFilm ? tr("Uses the film from its first frame.")
                               : tr("Uses the recording from its beginning to its end."));
    connect(m_whole, &QPushButton::clicked, this, [this] { emit partWanted({}, {}); });
    auto* const layout = new QHBoxLayout(this);
    layout->setContentsMargins(4, 0, 4, 0);
    layout->addWidget(new QLabel(tr("Used from")));
    layout->addWidget(m_from);
    layout->addWidget(new QLabel(tr("to", "end of the part of a recording")));
    layout->addWidget(m_to);
    layout->addWidget(m_whole);
    layout->addStretch(1);
    setPart({}, {});
}

void PartRow::setLength(double end_s, double tick_s)
{
    m_end_s = end_s;
    m_tick_s = tick_s;
    const QSignalBlocker quietFrom(m_from), quietTo(m_to);
    m_from->setRange(0.0, end_s);
    m_to->setRange(0.0, end_s);
    showPart();
}

void PartRow::setPart(std::optional<double> from_s, std::optional<double> to_s)
{
    m_from_s = from_s;
    m_to_s = to_s;
    showPart();
}

// The way back to the whole is open however little is known.
void PartRow::showPart()
{
    m_from->show(m_from_s.value_or(0.0));
    m_to->show(m_to_s.value_or(m_end_s));
    m_from->setEnabled(m_end_s > 0.0);
    m_to->setEnabled(m_end_s > 0.0);
    m_whole->setEnabled(m_from_s || m_to_s);
}

void PartRow::want(double from_s, double to_s)
{
    emit partWanted(from_s >= m_tick_s ? std::optional(from_s) : std::nullopt,
                    to_s <= m_end_s - m_tick_s ? std::optional(to_s) : std::nullopt);
}

}  // namespace stillbay::ui
