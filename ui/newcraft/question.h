// SPDX-License-Identifier: MIT
#pragma once

#include "core/newcraft/new_craft.h"
#include "core/setup/fields.h"

#include <QObject>
#include <QString>
#include <QStringList>

#include <functional>
#include <optional>
#include <string_view>
#include <type_traits>
#include <variant>

class QComboBox;
class QGridLayout;
class QLabel;
class QWidget;

namespace stillbay::ui {

class NumberBox;

/// One question of the guide: label, editor, and whether its answer is the builder's or typical.
class Question : public QObject {
    Q_OBJECT
public:
    void addTo(QGridLayout& grid);  ///< as its last row
    QWidget* editor() const { return m_editor; }
    const QString& field() const { return m_field; }  ///< path of what it is about
    void focus();  ///< what is typed next replaces what stands there
    virtual bool isAnswered() const = 0;
    /// Shows what the craft has where the builder has said nothing.
    virtual void display(const Setup& setup, const CraftChoices& choices) = 0;
    virtual void commit() {}  ///< takes what is typed and not yet entered

signals:
    void changed();                       ///< the answers
    void refused(const QString& reason);  ///< what was typed; the old answer stays

protected:
    Question(CraftAnswers& answers, const QString& label, QWidget* editor, const char* field,
             QObject* parent);
    void showOrigin();

    CraftAnswers& m_answers;

private:
    QWidget* m_editor;
    QString m_field;
    QLabel* m_label;
    QLabel* m_origin;
};

/// What the field table says of a number.
struct NumberLook {
    const char* unit = "";
    const char* meaning = "";
    double min = 0.0, max = 0.0, step = 1.0;
    bool whole = false;
};

template <class Owner>
NumberLook lookOf(std::string_view key)
{
    for (const Field<Owner>& field : fieldsOf<Owner>())
        if (field.key == key)
            return {field.unit, field.meaning, field.min,
                    field.max,  field.step,    std::holds_alternative<int Owner::*>(field.member)};
    return {};
}

class NumberQuestion final : public Question {
    Q_OBJECT
public:
    using Answer =
        std::variant<std::optional<double> CraftAnswers::*, std::optional<int> CraftAnswers::*>;

    /// @param used  what the craft has
    NumberQuestion(CraftAnswers& answers, Answer answer, const QString& label,
                   const NumberLook& look, std::function<double(const Setup&)> used,
                   const char* field, QObject* parent);

    bool isAnswered() const override;
    void display(const Setup& setup, const CraftChoices& choices) override;
    void commit() override;

private:
    void take(std::optional<double> value);
    void refuse(const QString& reason);

    Answer m_answer;
    std::function<double(const Setup&)> m_used;
    NumberBox* m_box;
    std::optional<QString> m_typed;  // since the last entry
};

class ChoiceQuestion final : public Question {
    Q_OBJECT
public:
    /// How the answers have the index of the chosen entry.
    struct Answer {
        std::function<std::optional<std::size_t>(const CraftAnswers&)> read;
        std::function<void(CraftAnswers&, std::optional<std::size_t>)> write;
    };

    /// @param used  the entry that the craft has
    ChoiceQuestion(CraftAnswers& answers, Answer answer, const QString& label,
                   const QStringList& entries, const QString& meaning,
                   std::function<std::size_t(const CraftChoices&)> used, const char* field,
                   QObject* parent);

    bool isAnswered() const override;
    void display(const Setup& setup, const CraftChoices& choices) override;

private:
    Answer m_answer;
    QStringList m_entries;
    std::function<std::size_t(const CraftChoices&)> m_used;
    QComboBox* m_box;
};

}  // namespace stillbay::ui
