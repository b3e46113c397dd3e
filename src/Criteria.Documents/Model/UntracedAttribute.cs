namespace Criteria.Documents.Model;

/// <summary>Marks a name that says nothing about the patient: it may be printed outside <c>rests_on</c>.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class UntracedAttribute : Attribute;

/// <summary>Marks a name that identifies somebody: a document may print it only when it declares so.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class IdentityAttribute : Attribute;
