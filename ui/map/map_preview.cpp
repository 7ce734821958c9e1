// SPDX-License-Identifier: MIT
#include "ui/map/map_preview.h"

#include "core/assess/texts.h"
#include "ui/charts/point_text.h"
#include "ui/charts/spark_line.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/quantity.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>

namespace stillbay::ui {
namespace {

constexpr int kPreviewLines = 3;
constexpr int kCurveCharacters = 26;
constexpr int kPreviewDigits = 3;
constexpr double kLineWidth = 1.4;

}  // namespace

/// A wobble curve by itself.
class SparkLine final : public QWidget {
public:
    using QWidget::QWidget;

    void show(std::vector<WobbleAt> curve, const Limits& limits)
    {
        m_curve = std::move(curve);
        m_limits = limits;
        update();
    }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        const ChartTheme theme = chartTheme(palette(), false);
        drawSparkLine(painter, QRectF(rect()).adjusted(2.0, 4.0, -2.0, -4.0), m_curve, m_limits,
                      theme, QPen(theme.text, kLineWidth));
    }

private:
    std::vector<WobbleAt> m_curve;
    Limits m_limits;
};

MapPreview::MapPreview(QWidget* parent)
    : QWidget(parent), m_text(new QLabel(this)), m_curve(new SparkLine(this))
{
    m_text->setAccessibleName(tr("The tune that is pointed at"));
    m_text->setTextFormat(Qt::RichText);
    m_text->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_text->setWordWrap(true);
    m_text->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_curve->setToolTip(
        tr("Its wobble over the throttle; the lines are the faint and the bad "
           "limit."));
    m_curve->setFixedWidth(kCurveCharacters * fontMetrics().averageCharWidth());
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(4, 2, 4, 2);
    row->addWidget(m_text, 1);
    row->addWidget(m_curve);
    setFixedHeight(kPreviewLines * fontMetrics().lineSpacing() + 6);
    clear();
}

void MapPreview::write(const QString& design, const QStringList& lines)
{
    QString html = QStringLiteral("<b>%1</b>").arg(design.toHtmlEscaped());
    for (const QString& line : lines)
        html += QStringLiteral("<br>") + line.toHtmlEscaped();
    if (m_text->text() != html)
        m_text->setText(html);
}

void MapPreview::clear()
{
    m_curve->show({}, {});
    m_text->setText(tr("Point at a place to see how it would fly."));
}

void MapPreview::showDue(const QString& design)
{
    m_curve->show({}, {});
    write(design, {tr("Looking…")});
}

void MapPreview::display(const QString& design, const Limits& limits,
                         const Result<TuneFigures>& figures)
{
    if (!figures) {
        m_curve->show({}, {});
        write(tr("%1: no answer").arg(design), {displayText(figures.error().what)});
        return;
    }
    m_curve->show(figures->curve, limits);
    QString verdict = figures->cruise ? gradeWord(limits, figures->cruise->worst_px())
                                      : displayText(outsideCruiseText());
    if (!figures->status.violated.empty()) {
        QStringList texts;
        for (const Warning& violated : figures->status.violated)
            texts << displayText(violated.text);
        verdict = texts.join(tr(", "));
    }
    QStringList lines;
    if (figures->cruise)
        lines << tr("%1 with a full pack, %2 with an empty one")
                     .arg(wobbleText(figures->cruise->full.worst_px, kPreviewDigits),
                          wobbleText(figures->cruise->empty.worst_px, kPreviewDigits));
    lines << displayText(restText(figures->rest));
    write(tr("%1: %2").arg(design, verdict), lines);
}

QString MapPreview::text() const
{
    return m_text->text();
}

}  // namespace stillbay::ui
