using System.Reflection;
using System.Runtime.CompilerServices;

namespace Criteria.Tests;

/// <summary>The public surface of an assembly as text, one member a line, in a stable order.</summary>
internal static class PublicApi
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Compares the surface with the text beside the test; <c>CRITERIA_ACCEPT=1</c> rewrites the text.</summary>
    public static void ShouldBeThatOf(Assembly assembly)
    {
        // Sources are mapped in a deterministic build; the tests run three folders below their project.
        var golden = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "..", "..", "PublicApi.golden.txt"));
        var text = string.Concat(Lines(assembly).Select(line => line + "\n"));
        if (Environment.GetEnvironmentVariable("CRITERIA_ACCEPT") == "1")
        {
            File.WriteAllText(golden, text);
        }

        text.ShouldBe(File.ReadAllText(golden).ReplaceLineEndings("\n"), "the public surface changed; CRITERIA_ACCEPT=1 rewrites the text");
    }

    /// <summary>Every assembly of which the surface shows a type, as base, interface, parameter, result, constraint or type argument.</summary>
    public static IEnumerable<string> AssembliesShown(Assembly assembly) => assembly.GetExportedTypes()
        .SelectMany(type => type.GetInterfaces().Append(type.BaseType).OfType<Type>().Concat(Members(type).SelectMany(TypesOf)))
        .SelectMany(Whole).Select(type => type.Assembly.GetName().Name!).Distinct().Order(StringComparer.Ordinal);

    private static IEnumerable<string> Lines(Assembly assembly) => assembly.GetExportedTypes().OrderBy(Name, StringComparer.Ordinal)
        .SelectMany(type => Members(type).Select(member => $"  {Signature(member)}").Order(StringComparer.Ordinal).Prepend(Head(type)));

    // What the compiler adds to a record says nothing that `record` does not.
    private static IEnumerable<MemberInfo> Members(Type type) => type.GetMembers(Declared)
        .Where(member => IsVisible(member) && member is not Type && !member.IsDefined(typeof(CompilerGeneratedAttribute))
            && member is not FieldInfo { IsSpecialName: true } && !(member is MethodBase { IsSpecialName: true } and not ConstructorInfo && !member.Name.StartsWith("op_", StringComparison.Ordinal)));

    private static bool IsVisible(MemberInfo member) => member switch
    {
        MethodBase method => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly,
        PropertyInfo property => property.GetAccessors(nonPublic: true).Any(IsVisible),
        FieldInfo field => field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly,
        _ => false,
    };

    private static IEnumerable<Type> TypesOf(MemberInfo member) => member switch
    {
        MethodBase method => method.GetParameters().Select(parameter => parameter.ParameterType)
            .Concat(method.IsGenericMethod ? method.GetGenericArguments().SelectMany(argument => argument.GetGenericParameterConstraints()) : [])
            .Append((method as MethodInfo)?.ReturnType ?? typeof(void)),
        PropertyInfo property => [property.PropertyType],
        FieldInfo field => [field.FieldType],
        _ => [],
    };

    private static IEnumerable<Type> Whole(Type type) => type.GetGenericArguments().SelectMany(Whole)
        .Concat(type.HasElementType ? Whole(type.GetElementType()!) : []).Append(type);

    private static string Head(Type type)
    {
        var kind = type.IsEnum ? "enum" : type.IsInterface ? "interface" : type.IsValueType ? "struct"
            : type is { IsAbstract: true, IsSealed: true } ? "static class" : type.IsAbstract ? "abstract class" : type.IsSealed ? "sealed class" : "class";
        var record = type.GetMethod("PrintMembers", Declared) is null ? "" : "record ";
        var parent = type.BaseType is { } above && above != typeof(object) && above != typeof(ValueType) && above != typeof(Enum) ? $" : {Name(above)}" : "";
        return $"{record}{kind} {Name(type)}{parent}";
    }

    private static string Signature(MemberInfo member) => member switch
    {
        FieldInfo { IsLiteral: true } constant => $"const {Name(constant.FieldType)} {constant.Name} = {Convert.ToString(constant.GetRawConstantValue(), System.Globalization.CultureInfo.InvariantCulture)}",
        FieldInfo field => $"{(field.IsStatic ? "static " : "")}field {Name(field.FieldType)} {field.Name}",
        PropertyInfo property => Property(property),
        ConstructorInfo constructor => $"new({Parameters(constructor)})",
        MethodInfo method => $"{Modifiers(method)}{Name(method.ReturnType)} {method.Name}({Parameters(method)})",
        _ => member.Name,
    };

    private static string Property(PropertyInfo property)
    {
        var accessors = property.GetAccessors(nonPublic: true).Where(IsVisible)
            .Select(accessor => accessor.ReturnType != typeof(void) ? "get"
                : accessor.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)) ? "init" : "set");
        var required = property.IsDefined(typeof(RequiredMemberAttribute)) ? "required " : "";
        var index = property.GetIndexParameters() is { Length: > 0 } parameters ? $"[{string.Join(", ", parameters.Select(Parameter))}]" : "";
        return $"{Modifiers(property.GetAccessors(nonPublic: true)[0])}{required}{Name(property.PropertyType)} {property.Name}{index} {{ {string.Join("; ", accessors)} }}";
    }

    private static string Modifiers(MethodInfo method) =>
        (method.IsPublic ? "" : "protected ") + (method.IsStatic ? "static " : method.GetBaseDefinition() != method ? "override " : method.IsAbstract ? "abstract " : method is { IsVirtual: true, IsFinal: false } ? "virtual " : "");

    private static string Parameters(MethodBase method) => string.Join(", ", method.GetParameters().Select(Parameter));

    private static string Parameter(ParameterInfo parameter) =>
        (parameter.IsOut ? "out " : "") + $"{Name(parameter.ParameterType)} {parameter.Name}" + (parameter.HasDefaultValue ? $" = {parameter.DefaultValue ?? "null"}" : "");

    private static string Name(Type type)
    {
        if (type.HasElementType)
        {
            return Name(type.GetElementType()!) + (type.IsArray ? "[]" : "");
        }

        if (type.IsGenericParameter)
        {
            return type.Name;
        }

        var own = type.FullName is not null && type.Namespace!.StartsWith("Criteria", StringComparison.Ordinal);
        var name = own && type.Namespace!.Split('.').Length > 2 ? $"{type.Namespace.Split('.')[^1]}.{type.Name}" : type.Name;
        return type.IsGenericType ? $"{name.Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>" : name;
    }
}
