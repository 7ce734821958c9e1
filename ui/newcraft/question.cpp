// SPDX-License-Identifier: MIT
#include "ui/newcraft/question.h"

#include "ui/widgets/colours.h"
#include "ui/widgets/display_text.h"
#include "ui/widgets/labels.h"
#include "ui/widgets/number_box.h"

#include <QApplication>
#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QLocale>

#include <cmath>
#include <utility>

namespace stillbay::ui {
namespace {

constexpr int kLabelColumn = 0, kEditorColumn = 1, kOriginColumn = 2;
constexpr int kShortestChoice = 16;  // letters of an entry that are always seen

QString withoutMnemonic(QString label)
{
    return label.remove(u'&');
}

void setTextColour(QWidget& widget, const QColor& colour)
{
    QPalette palette = widget.palette();
    for (const QPalette::ColorRole role : {QPalette::Text, QPalette::ButtonText})
        for (const QPalette::ColorGroup group : {QPalette::Active, QPalette::Inactive})
            palette.setColor(group, role, colour);
    widget.setPalette(palette);
}

}  // namespace

Question::Question(CraftAnswers& answers, const QString& label, QWidget* editor, const char* field,
                   QObject* parent)
    : QObject(parent),
      m_answers(answers),
      m_editor(editor),
      m_field(QString::fromLatin1(field)),
      m_label(new QLabel(label)),
      m_origin(new QuietLabel)
{
    m_label->setBuddy(m_editor);
    m_editor->setAccessibleName(withoutMnemonic(label));
    m_origin->setWordWrap(false);
}

void Question::addTo(QGridLayout& grid)
{
    const int row = grid.rowCount();
    grid.addWidget(m_label, row, kLabelColumn);
    grid.addWidget(m_editor, row, kEditorColumn);
    grid.addWidget(m_origin, row, kOriginColumn);
}

void Question::focus()
{
    m_editor->setFocus(Qt::TabFocusReason);
    if (auto* const box = qobject_cast<NumberBox*>(m_editor))
        box->selectAll();
}

void Question::showOrigin()
{
    const QString origin = isAnswered() ? tr("yours") : tr("typical");
    m_origin->setText(origin);
    m_editor->setAccessibleDescription(origin);
    const QPalette palette = QApplication::palette();
    setTextColour(*m_editor, isAnswered() ? palette.color(QPalette::Text) : quietColour(palette));
}

NumberQuestion::NumberQuestion(CraftAnswers& answers, Answer answer, const QString& label,
                               const NumberLook& look, std::function<double(const Setup&)> used,
                               const char* field, QObject* parent)
    : Question(answers, label, new NumberBox, field, parent),
      m_answer(answer),
      m_used(std::move(used)),
      m_box(static_cast<NumberBox*>(editor()))
{
    const QLocale locale;
    const QString unit = displayText(look.unit);
    m_box->setRange(look.min, look.max);
    m_box->setSingleStep(look.step);
    m_box->setWhole(look.whole);
    m_box->setUnit(unit);
    m_box->setToolTip(QStringLiteral("<p>%1</p><p>%2</p><p>%3</p>")
                          .arg(displayText(look.meaning).toHtmlEscaped(),
                               tr("Allowed: %1 to %2 %3")
                                   .arg(locale.toString(look.min), locale.toString(look.max), unit)
                                   .trimmed(),
                               tr("Empty it to return to what is typical.")));
    connect(m_box->findChild<QLineEdit*>(), &QLineEdit::textEdited, this,
            [this](const QString& text) { m_typed = text; });
    connect(m_box, &NumberBox::valueChanged, this, [this](double value) { take(value); });
    connect(m_box, &NumberBox::refused, this, &NumberQuestion::refuse);
    connect(m_box, &NumberBox::editingFinished, this, &NumberQuestion::commit);
}

bool NumberQuestion::isAnswered() const
{
    return std::visit([&](auto member) { return (m_answers.*member).has_value(); }, m_answer);
}

void NumberQuestion::display(const Setup& setup, const CraftChoices&)
{
    m_box->show(m_used(setup));
    showOrigin();
}

// The same number as is typical, typed, is the builder's.
void NumberQuestion::commit()
{
    if (!m_typed)
        return;
    m_box->interpretText();
    if (m_typed)
        take(m_box->value());
}

void NumberQuestion::take(std::optional<double> value)
{
    m_typed.reset();
    std::visit(
        [&](auto member) {
            auto& answer = m_answers.*member;
            if constexpr (std::is_same_v<decltype(member), std::optional<int> CraftAnswers::*>)
                answer = value ? std::optional<int>(static_cast<int>(std::lround(*value)))
                               : std::nullopt;
            else
                answer = value;
        },
        m_answer);
    emit changed();
}

void NumberQuestion::refuse(const QString& reason)
{
    QString typed = std::exchange(m_typed, {}).value_or(QString());
    if (typed.remove(m_box->suffix().trimmed()).trimmed().isEmpty())
        take({});
    else
        emit refused(reason);
}

ChoiceQuestion::ChoiceQuestion(CraftAnswers& answers, Answer answer, const QString& label,
                               const QStringList& entries, const QString& meaning,
                               std::function<std::size_t(const CraftChoices&)> used,
                               const char* field, QObject* parent)
    : Question(answers, label, new QComboBox, field, parent),
      m_answer(std::move(answer)),
      m_entries(entries),
      m_used(std::move(used)),
      m_box(static_cast<QComboBox*>(editor()))
{
    m_box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_box->setMinimumContentsLength(kShortestChoice);
    m_box->addItem(QString());
    m_box->addItems(entries);
    m_box->setToolTip(QStringLiteral("<p>%1</p>").arg(meaning.toHtmlEscaped()));
    connect(m_box, &QComboBox::activated, this, [this](int index) {
        m_answer.write(m_answers, index == 0 ? std::nullopt
                                             : std::optional<std::size_t>(
                                                   static_cast<std::size_t>(index - 1)));
        emit changed();
    });
}

bool ChoiceQuestion::isAnswered() const
{
    return m_answer.read(m_answers).has_value();
}

void ChoiceQuestion::display(const Setup&, const CraftChoices& choices)
{
    const auto name = m_entries.value(static_cast<int>(m_used(choices)));
    m_box->setItemText(0, isAnswered() ? tr("what is typical") : tr("%1 (typical)").arg(name));
    const std::optional<std::size_t> chosen = m_answer.read(m_answers);
    m_box->setCurrentIndex(chosen ? static_cast<int>(*chosen) + 1 : 0);
    showOrigin();
}

}  // namespace stillbay::ui
