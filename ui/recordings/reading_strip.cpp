// SPDX-License-Identifier: MIT
#include "ui/recordings/reading_strip.h"

#include "ui/widgets/thin_progress.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr int kReadingProgressHeight = 4;

}  // namespace

ReadingStrip::ReadingStrip(OfWhat what, QWidget* parent)
    : QWidget(parent),
      m_state(new QLabel),
      m_stop(new QPushButton(tr("Stop"))),
      m_progress(new ThinProgress(what == OfWhat::Film ? tr("Progress of the film's reading")
                                                       : tr("Progress of the reading"),
                                  kReadingProgressHeight))
{
    m_stop->setAccessibleName(what == OfWhat::Film ? tr("Stop reading the film, or read it again")
                                                   : tr("Stop reading, or read again"));
    m_state->setWordWrap(true);
    auto* const row = new QHBoxLayout;
    row->addWidget(m_state, 1);
    row->addWidget(m_stop);
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addLayout(row);
    layout->addWidget(m_progress);
    connect(m_stop, &QPushButton::clicked, this, [this] {
        if (m_isAgain)
            emit readWanted();
        else
            emit stopWanted();
    });
    clear();
}

void ReadingStrip::offer(const QString& button)
{
    m_stop->setVisible(!button.isEmpty());
    if (!button.isEmpty())
        m_stop->setText(button);
}

void ReadingStrip::showReading(const QString& text)
{
    m_isAgain = false;
    m_state->setText(text);
    offer(tr("Stop"));
}

void ReadingStrip::showAgain(const QString& text)
{
    m_isAgain = true;
    m_progress->hide();
    m_state->setText(text);
    offer(tr("Read again"));
}

void ReadingStrip::showState(const QString& text, const QString& details)
{
    m_isAgain = false;
    m_progress->hide();
    m_state->setText(text);
    m_state->setToolTip(details);
    offer({});
}

void ReadingStrip::advance(int step, int steps)
{
    m_progress->advance(step, steps);
}

}  // namespace stillbay::ui
