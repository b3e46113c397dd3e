using System.Collections.Frozen;
using System.Reflection;
using Criteria.Documents.Model;
using Fluid;
using Fluid.Values;

namespace Criteria.Documents.Templating;

/// <summary>The names that templates may use, read once from the model, so that the check and the rendering cannot differ.</summary>
internal static class TemplateNames
{
    /// <summary>The filters, in alphabetical order. Nothing that reads a clock or makes markup.</summary>
    public static readonly FrozenSet<string> Filters = FrozenSet.Create(
        StringComparer.Ordinal, "append", "capitalize", "downcase", "first", "join", "last", "lower_first", "map", "plus", "prepend", "replace", "reverse", "size", "sort", "strip", "uniq", "where");

    /// <summary>The filters that leave a list of the same things, or give one of them.</summary>
    public static readonly FrozenSet<string> KeepType = FrozenSet.Create(StringComparer.Ordinal, "first", "last", "reverse", "sort", "uniq", "where");

    private static readonly Type[] Types =
    [
        typeof(CaseModel), typeof(NightModel), typeof(FactModel), typeof(FindingModel), typeof(MissingModel), typeof(QuestionModel), typeof(OptionModel),
        typeof(OverrideModel), typeof(SectionModel), typeof(AskModel), typeof(QuestionToAskModel), typeof(CoverageModel), typeof(CheckModel), typeof(RecordModel), typeof(SupportModel),
        typeof(EventModel), typeof(CautionModel), typeof(ChoiceModel), typeof(SeveralNightsModel), typeof(RecipientModel), typeof(FigureModel),
    ];

    private static readonly FrozenDictionary<Type, FrozenDictionary<string, PropertyInfo>> Members = Types.ToFrozenDictionary(
        type => type,
        type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance).ToFrozenDictionary(MemberNameStrategies.RenameSnakeCase, property => property, StringComparer.Ordinal));

    /// <summary>The members of a type of the model; empty for text, numbers and tables.</summary>
    public static IReadOnlyDictionary<string, PropertyInfo> Of(Type type) => Members.GetValueOrDefault(type, FrozenDictionary<string, PropertyInfo>.Empty);

    /// <summary>What a list is of, or null for what is no list.</summary>
    public static Type? ItemOf(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) ? type.GetGenericArguments()[0] : null;

    /// <summary>The options of every rendering.</summary>
    public static TemplateOptions Options { get; } = MakeOptions();

    private static TemplateOptions MakeOptions()
    {
        var options = new TemplateOptions
        {
            CultureInfo = System.Globalization.CultureInfo.InvariantCulture,
            Now = () => DateTimeOffset.UnixEpoch,
            TimeZone = TimeZoneInfo.Utc,
            Greedy = false,
        };
        foreach (var (type, members) in Members)
        {
            foreach (var (name, property) in members)
            {
                options.MemberAccessStrategy.Register(type, name, new Accessor(property));
            }
        }

        options.MemberAccessStrategy.Register<FindingTable, FindingModel?>((table, name) => table[name]);
        options.MemberAccessStrategy.Register<FactTable, FactModel?>((table, name) => table[name]);
        options.MemberAccessStrategy.Register<FactSections, IReadOnlyList<FactModel>>((sections, place) => sections[place]);
        options.MemberAccessStrategy.Register<IdentityTable, string>((table, name) => table[name]);
        options.Filters.AddFilter("lower_first", (input, _, _) => new StringValue(Wording.Words.Small(input.ToStringValue())));
        return options;
    }

    private sealed class Accessor(PropertyInfo property) : IMemberAccessor
    {
        public object? Get(object obj, string name, TemplateContext ctx) => property.GetValue(obj);
    }
}
