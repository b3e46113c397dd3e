namespace Criteria.Engine;

/// <summary>The version of the program, as every output names it.</summary>
public static class ProgramVersion
{
    /// <summary>Major, minor and patch.</summary>
    public static string Text { get; } = typeof(ProgramVersion).Assembly.GetName().Version!.ToString(3);
}
