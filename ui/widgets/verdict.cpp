// SPDX-License-Identifier: MIT
#include "ui/widgets/verdict.h"

#include "ui/widgets/grade_flag.h"
#include "ui/widgets/labels.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QVBoxLayout>

namespace stillbay::ui {
namespace {

constexpr int kFlag = 18;  // width of the coloured edge

}  // namespace

Verdict::Kind Verdict::kindOf(Grade grade)
{
    switch (grade) {
        case Grade::Clean:
            return Kind::Clean;
        case Grade::Faint:
            return Kind::Faint;
        case Grade::Bad:
            break;
    }
    return Kind::Bad;
}

Verdict::Kind Verdict::kindOf(const Status& status)
{
    if (!status.flyable)
        return Kind::Bad;
    const Kind filmed = status.grade ? kindOf(*status.grade) : Kind::None;
    return filmed == Kind::Clean && !status.violated.empty() ? Kind::Faint : filmed;
}

Verdict::Verdict(QWidget* parent)
    : QFrame(parent),
      m_row(new QHBoxLayout(this)),
      m_headline(new QLabel(this)),
      m_detail(new QuietLabel({}, this))
{
    QFont large = font();
    large.setPointSizeF(1.35 * large.pointSizeF());
    large.setBold(true);
    m_headline->setFont(large);
    m_headline->setWordWrap(true);
    m_headline->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    // Room for two lines: what stands below does not hop when the first one breaks.
    m_headline->setMinimumHeight(2 * QFontMetrics(large).lineSpacing());
    m_headline->setAccessibleName(tr("Verdict"));
    m_detail->setAccessibleName(tr("Verdict, details"));
    m_row->setContentsMargins(kFlag + 10, 8, 10, 8);
    m_row->setSpacing(12);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(m_headline);
    words->addWidget(m_detail);
    m_row->addLayout(words, 3);
    setAccessibleName(tr("Verdict for cruise"));
}

void Verdict::display(Kind kind, const QString& headline, const QString& detail)
{
    m_kind = kind;
    m_headline->setText(headline);
    m_detail->setText(detail);
    update();
}

void Verdict::addAside(QWidget* widget)
{
    m_headline->setMinimumHeight(0);
    m_row->setContentsMargins(kFlag + 10, 5, 8, 5);
    m_row->addWidget(widget, 2);
}

void Verdict::setStale(bool stale)
{
    if (m_stale == stale)
        return;
    m_stale = stale;
    m_headline->setEnabled(!stale);
    m_detail->setEnabled(!stale);
    update();
}

QString Verdict::text() const
{
    return m_headline->text() + u'\n' + m_detail->text();
}

void Verdict::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(palette().color(QPalette::Mid), 1.0));
    painter.setBrush(palette().base());
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), 4.0, 4.0);
    painter.setOpacity(m_stale ? 0.4 : 1.0);
    drawGradeFlag(painter, QRectF(1.0, 1.0, kFlag, height() - 2.0), m_kind, palette());
}

}  // namespace stillbay::ui
