// SPDX-License-Identifier: MIT
#include "ui/recordings/empty_page.h"

#include "ui/widgets/labels.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace stillbay::ui {

EmptyPage::EmptyPage(QWidget* parent)
    : QWidget(parent), m_samples(new QPushButton(tr("Add the sample recordings")))
{
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(24, 24, 24, 24);
    layout->addStretch(1);
    auto* const text = new QuietLabel(
        tr("Add what a sensor, a microphone, a camera or a flight log took of this craft, by the "
           "button on the left or by dropping the file here: the tab lays it over the prediction "
           "and offers better numbers."));
    text->setAlignment(Qt::AlignCenter);
    layout->addWidget(text);
    m_samples->setToolTip(
        tr("Invented recordings of this sample craft, as if it had been built "
           "and differed from its file."));
    m_samples->setAutoDefault(true);
    layout->addWidget(m_samples, 0, Qt::AlignHCenter);
    layout->addStretch(2);
    connect(m_samples, &QPushButton::clicked, this, &EmptyPage::samplesWanted);
}

void EmptyPage::offerSamples(bool areThere)
{
    m_samples->setVisible(areThere);
}

}  // namespace stillbay::ui
