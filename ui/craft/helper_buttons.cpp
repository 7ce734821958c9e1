// SPDX-License-Identifier: MIT
#include "ui/craft/helper_buttons.h"

#include "ui/craft/balance_dialog.h"
#include "ui/craft/exposure_dialog.h"
#include "ui/craft/thrust_dialog.h"

namespace stillbay::ui {

BalanceButton::BalanceButton(Document& document, QWidget* parent)
    : QPushButton(tr("Balance with tape…"), parent)
{
    setToolTip(tr("Works out the unbalance from a strip of tape and its distance from the axis."));
    connect(&document, &Document::setupChanged, this, [this] { setHoverSpeed(std::nullopt); });
    connect(this, &QPushButton::clicked, this, [this, &document] {
        m_dialog = new BalanceDialog(document, this);
        m_dialog->setAttribute(Qt::WA_DeleteOnClose);
        m_dialog->setHoverSpeed(m_hoverSpeed_rpm);
        m_dialog->open();
    });
}

void BalanceButton::setAssessment(const Assessment& assessment)
{
    setHoverSpeed(assessment.hover.speed_rpm);
}

void BalanceButton::setHoverSpeed(std::optional<double> speed_rpm)
{
    m_hoverSpeed_rpm = speed_rpm;
    if (m_dialog)
        m_dialog->setHoverSpeed(speed_rpm);
}

ExposureButton::ExposureButton(Document& document, QWidget* parent)
    : QPushButton(tr("Shutter and filter…"), parent)
{
    setToolTip(tr("Works out the exposure from a shutter angle and a neutral-density filter."));
    connect(this, &QPushButton::clicked, this, [this, &document] {
        auto* const dialog = new ExposureDialog(document, this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
}

ThrustButton::ThrustButton(Document& document, QWidget* parent)
    : QPushButton(tr("From a thrust table…"), parent)
{
    setToolTip(tr("Works out the coefficients, and KV, from a table noted on a thrust stand."));
    connect(this, &QPushButton::clicked, this, [this, &document] {
        auto* const dialog = new ThrustDialog(document, this);
        dialog->setAttribute(Qt::WA_DeleteOnClose);
        dialog->open();
    });
}

}  // namespace stillbay::ui
