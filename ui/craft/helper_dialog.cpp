// SPDX-License-Identifier: MIT
#include "ui/craft/helper_dialog.h"

#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kWidth_em = 42;  // sentences of a length that reads well

}  // namespace

HelperDialog::HelperDialog(Document& document, const QString& title, const QString& purpose,
                           QWidget* parent)
    : QDialog(parent),
      m_document(document),
      m_layout(new QVBoxLayout(this)),
      m_form(new QFormLayout),
      m_outcome(new QLabel(this)),
      m_problem(new ProblemLabel(this)),
      m_note(new QuietLabel({}, this))
{
    setWindowTitle(title);
    setMinimumWidth(kWidth_em * fontMetrics().horizontalAdvance(u'm'));
    auto* const intro = new QLabel(purpose, this);
    intro->setWordWrap(true);
    m_outcome->setWordWrap(true);
    m_outcome->setAccessibleName(tr("Outcome"));

    auto* const buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    QPushButton* const take = buttons->addButton(tr("&Use it"), QDialogButtonBox::ActionRole);
    take->setToolTip(tr("Writes the outcome into the craft, one step to undo."));
    for (QAbstractButton* button : buttons->buttons())
        static_cast<QPushButton*>(button)->setAutoDefault(false);  // Enter is for the boxes
    connect(take, &QPushButton::clicked, this, &HelperDialog::use);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);

    m_layout->setSpacing(12);
    m_layout->addWidget(intro);
    m_layout->addLayout(m_form);
    m_layout->addWidget(m_outcome);
    m_layout->addWidget(m_problem);
    m_layout->addWidget(m_note);
    m_layout->addStretch();
    m_layout->addWidget(buttons);
}

NumberBox* HelperDialog::addNumber(const NumberSpec& spec)
{
    auto* const box = new NumberBox(this);
    const QLocale locale;
    box->setRange(spec.min, spec.max);
    box->setSingleStep(spec.step);
    box->setUnit(spec.unit);
    box->setAccessibleName(spec.label);
    box->setToolTip(
        QStringLiteral("<p>%1</p><p>%2</p>")
            .arg(spec.meaning.toHtmlEscaped(),
                 tr("Allowed: %1 to %2 %3")
                     .arg(locale.toString(spec.min), locale.toString(spec.max), spec.unit)
                     .trimmed()));
    connect(box, &NumberBox::valueChanged, this, [this] { m_hasRefused = false; });
    connect(box, &NumberBox::refused, this, [this](const QString& reason) {
        m_problem->refuse(reason);
        makeRoom();
        m_hasRefused = true;
    });
    addRow(spec.label, box);
    return box;
}

void HelperDialog::addRow(const QString& label, QWidget* editor)
{
    m_form->addRow(label, editor);
}

void HelperDialog::addWidget(QWidget* widget)
{
    m_layout->insertWidget(m_layout->indexOf(m_outcome), widget);
}

void HelperDialog::addChoice(QWidget* choice)
{
    m_layout->insertWidget(m_layout->indexOf(m_outcome) + 1, choice);
}

void HelperDialog::addNote(const QString& text)
{
    m_note->setText(text);
}

void HelperDialog::setOutcome(const QStringList& lines)
{
    QString text;
    for (const QString& line : lines)
        text += QStringLiteral("<p>%1</p>").arg(line.toHtmlEscaped());
    m_outcome->setText(text);
    makeRoom();
}

void HelperDialog::setProblem(const QString& problem)
{
    m_problem->format(problem);
    makeRoom();
}

// A window does not grow by itself when its wrapped texts do.
void HelperDialog::makeRoom()
{
    const int needed = layout()->totalHeightForWidth(width());
    if (height() < needed)
        resize(width(), needed);
}

void HelperDialog::use()
{
    for (NumberBox* box : findChildren<NumberBox*>())
        box->interpretText();  // where a press does not take the focus, an entry is still open
    if (std::exchange(m_hasRefused, false))
        return;  // the press itself may have ended the entry: the reason is to be read first
    if (m_problem->display(apply()))
        accept();
    else
        makeRoom();
}

}  // namespace stillbay::ui
