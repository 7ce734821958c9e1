// SPDX-License-Identifier: MIT
#include "ui/findings/uncertainty_panel.h"

#include "core/advice/uncertainty_texts.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/section.h"
#include "ui/widgets/thin_progress.h"

#include <QTextBrowser>
#include <QVBoxLayout>

#include <algorithm>

namespace stillbay::ui {
namespace {

constexpr std::chrono::milliseconds kLongQuiet(1000);  // after the last edit: it takes seconds
constexpr int kLineHeight = 3;
constexpr std::size_t kMostLines = 4;
constexpr int kLinesShown = 5;  // the rest is scrolled to

QString paragraph(const Phrase& sentence)
{
    return QStringLiteral("<p>%1</p>").arg(displayText(sentence).toHtmlEscaped());
}

QString htmlOf(const Uncertainty& uncertainty)
{
    QString html;
    std::vector<Phrase> lines = measureFirst(uncertainty);
    lines.resize(std::min(lines.size(), kMostLines));
    for (const Phrase& line : lines)
        html += QStringLiteral("<li>%1</li>").arg(displayText(line).toHtmlEscaped());
    if (!html.isEmpty())
        html = QStringLiteral("<ol style='margin-left: -20px'>%1</ol>").arg(html);
    for (const Phrase& sentence : uncertaintySentences(uncertainty))
        html += paragraph(sentence);
    if (const Phrase rest = buildToBuildText(uncertainty); !rest.pattern.empty())
        html += paragraph(rest);
    return html;
}

}  // namespace

UncertaintyPanel::UncertaintyPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      m_document(document),
      m_section(new Section(tr("What to measure first"), this)),
      m_progress(new ThinProgress(tr("Progress of the uncertainty"), kLineHeight, this)),
      m_text(new QTextBrowser(this)),
      m_job({.done = [this](const Result<Uncertainty>& uncertainty) { deliver(uncertainty); },
             .advanced =
                 [this](int step, int steps) {
                     m_progress->advance(step, steps);
                 }},
            kLongQuiet)
{
    m_text->setMinimumHeight(kLinesShown * fontMetrics().lineSpacing());
    m_text->setFrameShape(QFrame::NoFrame);
    QPalette plain = m_text->palette();
    plain.setColor(QPalette::Base, Qt::transparent);
    m_text->setPalette(plain);
    m_text->setAccessibleName(tr("What to measure first"));
    m_section->add(m_progress);
    m_section->add(m_text);
    m_section->setOpen(false);
    m_section->rememberAs(QStringLiteral("measure"));
    m_section->setSummary(tr("how sure it is"));
    auto* const layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_section);
    const auto takeRoom = [this] {
        setSizePolicy(QSizePolicy::Preferred,
                      m_section->isOpen() ? QSizePolicy::Preferred : QSizePolicy::Maximum);
    };
    takeRoom();
    connect(m_section, &Section::toggled, this, takeRoom);
    connect(m_section, &Section::toggled, this, &UncertaintyPanel::refresh);
    connect(&m_document, &Document::setupChanged, this, &UncertaintyPanel::refresh);
}

// While nobody looks, nothing is worked out.
void UncertaintyPanel::refresh()
{
    m_share.clear();
    emit changed();
    if (!m_section->isOpen() || !m_document.hasCraft())
        return m_job.drop();
    Setup key = m_document.setup();
    key.tunes.clear();
    m_text->setEnabled(false);
    m_job.want(key, [key](const Caller<Uncertainty>& caller) {
        return uncertainty(key, {}, caller.stop, caller.progress);
    });
}

void UncertaintyPanel::deliver(const Result<Uncertainty>& uncertainty)
{
    m_progress->hide();
    m_text->setEnabled(true);
    if (!uncertainty)
        return m_text->setPlainText(displayText(uncertainty.error().what));
    m_text->setHtml(htmlOf(*uncertainty));
    m_share = displayText(cleanShareText(*uncertainty));
    emit changed();
}

QString UncertaintyPanel::text() const
{
    return m_text->toPlainText();
}

}  // namespace stillbay::ui
