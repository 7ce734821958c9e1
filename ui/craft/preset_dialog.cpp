// SPDX-License-Identifier: MIT
#include "ui/craft/preset_dialog.h"

#include "ui/widgets/labels.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace stillbay::ui {
namespace {

QString cell(const QString& text, bool heading = false, bool right = true)
{
    const QString tag = heading ? QStringLiteral("th") : QStringLiteral("td");
    return QStringLiteral("<%1 align='%2' style='padding: 1px 12px 1px 0'>%3</%1>")
        .arg(tag, right ? QStringLiteral("right") : QStringLiteral("left"), text.toHtmlEscaped());
}

QString tableOf(const std::vector<PresetValue>& values)
{
    const bool compares = std::any_of(values.begin(), values.end(), [](const PresetValue& value) {
        return !value.now.isEmpty();
    });
    QString rows = cell({}, true, false) +
                   (compares ? cell(PresetDialog::tr("now"), true) : QString()) +
                   cell(PresetDialog::tr("then"), true) + cell(PresetDialog::tr("differ by"), true);
    for (const PresetValue& value : values)
        rows += QStringLiteral("</tr><tr>") + cell(value.label, false, false) +
                (compares ? cell(value.now) : QString()) + cell(value.then) + cell(value.spread);
    return QStringLiteral("<table><tr>%1</tr></table>").arg(rows);
}

// The same for a screen reader.
QString linesOf(const PresetEntry& entry, const std::vector<PresetValue>& values)
{
    QStringList lines;
    for (const PresetValue& value : values)
        lines << QStringLiteral("%1 %2 %3").arg(value.label, value.then, value.spread).trimmed();
    lines << entry.remark << entry.source;
    lines.removeAll(QString());
    return lines.join(QStringLiteral(", "));
}

QLabel* wrapped(QWidget* parent)
{
    auto* const label = new QLabel(parent);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    return label;
}

}  // namespace

PresetDialog::PresetDialog(Document& document, Spec spec, QWidget* parent)
    : QDialog(parent),
      m_document(document),
      m_spec(std::move(spec)),
      m_list(new QListWidget(this)),
      m_values(new QLabel(this)),
      m_source(wrapped(this)),
      m_problem(new ProblemLabel(this))
{
    setWindowTitle(m_spec.title);
    m_list->setAccessibleName(m_spec.title);
    m_list->setToolTip(tr("Enter takes the preset that is chosen."));
    m_values->setTextFormat(Qt::RichText);
    m_values->setAccessibleName(tr("What the preset fills in"));
    m_source->setAccessibleName(tr("Where the preset is from"));

    auto* const buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    m_use = buttons->addButton(tr("&Use it"), QDialogButtonBox::AcceptRole);
    m_use->setToolTip(tr("Writes these numbers into the craft, one step to undo."));
    m_use->setDefault(true);
    m_forget = buttons->addButton(tr("&Remove from the list"), QDialogButtonBox::ResetRole);
    m_forget->setToolTip(tr("Forgets a preset that you kept; the craft stays as it is."));
    m_forget->setVisible(static_cast<bool>(m_spec.forget));

    auto* const details = new QWidget;
    auto* const detailLayout = new QVBoxLayout(details);
    detailLayout->addWidget(m_values);
    detailLayout->addWidget(m_source);
    detailLayout->addStretch();
    auto* const area = new QScrollArea(this);
    area->setWidget(details);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    auto* const middle = new QHBoxLayout;
    middle->setSpacing(12);
    middle->addWidget(m_list, 4);
    middle->addWidget(area, 5);
    auto* const layout = new QVBoxLayout(this);
    layout->addLayout(middle, 1);
    layout->addWidget(m_problem);
    layout->addWidget(buttons);

    connect(m_list, &QListWidget::currentRowChanged, this, &PresetDialog::showChosen);
    connect(m_list, &QListWidget::itemDoubleClicked, this, &PresetDialog::use);
    connect(m_use, &QPushButton::clicked, this, &PresetDialog::use);
    connect(m_forget, &QPushButton::clicked, this, &PresetDialog::forget);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    const int em = fontMetrics().horizontalAdvance(u'm');
    resize(64 * em, 30 * em);
    fillList();
    m_list->setFocus();
}

void PresetDialog::fillList()
{
    m_entries = m_spec.entries();
    m_list->clear();
    for (const PresetEntry& entry : m_entries) {
        auto* const item = new QListWidgetItem(entry.name, m_list);
        item->setData(Qt::AccessibleDescriptionRole,
                      linesOf(entry, entry.values(m_document.setup())));
    }
    m_list->setCurrentRow(0);
    showChosen();
}

const PresetEntry* PresetDialog::chosen() const
{
    const int row = m_list->currentRow();
    return row < 0 || row >= static_cast<int>(m_entries.size())
               ? nullptr
               : &m_entries[static_cast<std::size_t>(row)];
}

void PresetDialog::showChosen()
{
    const PresetEntry* const entry = chosen();
    m_problem->format({});
    m_use->setEnabled(entry != nullptr);
    m_forget->setEnabled(entry && entry->isOwn());
    m_values->setText(entry ? tableOf(entry->values(m_document.setup())) : QString());
    m_source->setText(!entry           ? QString()
                      : entry->isOwn() ? entry->source
                      : entry->remark.isEmpty()
                          ? tr("From: %1.").arg(entry->source)
                          : tr("%1\n\nFrom: %2.").arg(entry->remark, entry->source));
}

void PresetDialog::use()
{
    const PresetEntry* const entry = chosen();
    if (!entry)
        return;
    const Result<void> done = m_document.edit(
        m_spec.undoText, {}, [&](Setup& setup) { setup = entry->fill(std::move(setup)); });
    if (m_problem->display(done))
        accept();
}

void PresetDialog::forget()
{
    const PresetEntry* const entry = chosen();
    if (!entry || !entry->isOwn())
        return;
    const int row = m_list->currentRow();
    if (!m_problem->display(m_spec.forget(*entry)))
        return;
    fillList();
    m_list->setCurrentRow(std::min(row, m_list->count() - 1));
    m_list->setFocus();
}

}  // namespace stillbay::ui
